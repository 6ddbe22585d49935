import type { Scale } from "@/lib/marks";
import { inputText, parseLength, parseOrUnknown, unitsSentence, type UnitPreferences } from "@/lib/units";

/** The bar beside the printed strip that a rule is held against, mm. */
const BAR_MM = 100;
/** Further off than this it is no printer's error: the page was scaled to fit. */
const MOST_OFF_MM = 10;
/** Further than this off the scale's plane is another set-up. */
const MOST_HEIGHT_MM = 100;

/** What a person measured about a scale that is set, as typed. */
export interface CorrectionTexts {
  /** Length of the printed bar. */
  readonly bar: string;
  /** How far the marked surface lies off the scale's plane, and on which side. */
  readonly height: string;
  readonly below: boolean;
  /** Give or take. */
  readonly spread: string;
}

export type CorrectionErrors = Readonly<Partial<Record<"bar" | "height" | "spread", string>>>;

/** What the scale holds by now, written out. */
export function correctionTexts(scale: Scale, units: UnitPreferences): CorrectionTexts {
  const write = (mm: number | null) => inputText("length", mm, units);
  const { surface } = scale;
  return {
    bar: write(scale.kind === "strip" ? scale.printFactor * BAR_MM : null),
    height: write(surface ? Math.abs(surface.aboveMm) : null),
    below: (surface?.aboveMm ?? 0) < 0,
    spread: write(surface?.plusMinusMm ?? null),
  };
}

/** The scale with its corrections, or what is wrong with each text. An empty text is: not measured. */
export function correctScale(
  scale: Scale,
  texts: CorrectionTexts,
  units: UnitPreferences,
): { readonly scale: Scale } | { readonly errors: CorrectionErrors } {
  const read = (text: string) => parseOrUnknown(text, (one) => parseLength(one, { default: units.length }));
  const fields = { bar: read(texts.bar), height: read(texts.height), spread: read(texts.spread) };
  const mm = (name: keyof typeof fields) => (fields[name].ok ? fields[name].value : null);
  const wrong = Object.entries(fields).flatMap(([name, one]) =>
    one.ok ? [] : [[name, one.issues.map(unitsSentence).join(" ")] as const],
  );
  const barMm = mm("bar") ?? BAR_MM;
  if (Math.abs(barMm - BAR_MM) > MOST_OFF_MM)
    wrong.push(["bar", "That is more than 10 % off. Print the page again at its full size (100 %)."]);
  for (const name of ["height", "spread"] as const)
    if ((mm(name) ?? 0) > MOST_HEIGHT_MM)
      wrong.push([name, "More than 100 mm is another set-up, not a correction."]);
  if (wrong.length > 0) return { errors: Object.fromEntries(wrong) };
  const [aboveMm, plusMinusMm] = [mm("height"), mm("spread")];
  const { surface: _, ...bare } = scale;
  const corrected: Scale = bare.kind === "strip" ? { ...bare, printFactor: barMm / BAR_MM } : bare;
  if (aboveMm === null && plusMinusMm === null) return { scale: corrected };
  return {
    scale: { ...corrected, surface: { aboveMm: (texts.below ? -1 : 1) * (aboveMm ?? 0), plusMinusMm } },
  };
}
