import type { RunChoices } from "@/lib/course";
import { parseReading, quantityOf, type RunSetup } from "@/lib/setup";
import { inputText, parseOrUnknown, unitsSentence, type UnitPreferences } from "@/lib/units";

/** What a student is asked of how it was run, as numbers. */
export const asked = ["wireFeedMPerMin", "volts", "ctwdMm"] as const;
export type Asked = (typeof asked)[number];

export type RunTexts = Readonly<Record<Asked, string>>;
export type ReadRun = Readonly<Record<Asked, ReturnType<typeof parseOrUnknown>>>;

export const noTexts: RunTexts = { wireFeedMPerMin: "", volts: "", ctwdMm: "" };

export function startTexts(setup: RunSetup, units: UnitPreferences): RunTexts {
  const text = (name: Asked) => inputText(quantityOf(name).input, setup[name], units);
  return { wireFeedMPerMin: text("wireFeedMPerMin"), volts: text("volts"), ctwdMm: text("ctwdMm") };
}

export const readTexts = (texts: RunTexts, units: UnitPreferences): ReadRun =>
  Object.fromEntries(
    asked.map((name) => [name, parseOrUnknown(texts[name], (text) => parseReading(name, text, units))]),
  ) as ReadRun;

/** What is wrong with one of them, in words; null when nothing is. */
export const errorOf = (read: ReadRun[Asked]): string | null =>
  read.ok ? null : read.issues.map(unitsSentence).join(" ");

/** What is wrong with the first of them that is wrong. */
export const firstError = (read: ReadRun): string | null =>
  asked.map((name) => errorOf(read[name])).find(Boolean) ?? null;

/** The numbers as they were read; what could not be read is not known. */
export function runOf(read: ReadRun, polarity: RunChoices["polarity"]): RunChoices {
  const value = (name: Asked) => (read[name].ok ? read[name].value : null);
  return {
    wireFeedMPerMin: value("wireFeedMPerMin"),
    volts: value("volts"),
    ctwdMm: value("ctwdMm"),
    polarity,
  };
}
