import {
  fieldInText,
  fieldLabel,
  findingSentence,
  showReading,
  spanText,
  valueInText,
  type RunSetup,
  type SetupField,
} from "@/lib/setup";
import { formatAmps, formatLength, formatQuantity, lengthSystem, type UnitPreferences } from "@/lib/units";
import type { PlanCode, PlanIssue } from "./issues";
import type { Knob, KnobReason } from "./knobs";
import type { Limit, LimitCode } from "./plan-run";
import type { Way, WayCode } from "./ways-out";

interface Words {
  readonly text: (key: string) => string;
  readonly number: (key: string) => number;
  /** A number of the data in the units of a field. */
  readonly show: (key: string, field: SetupField) => string;
}

function wordsFor(data: Readonly<Record<string, string | number>>, units: UnitPreferences): Words {
  const show = showReading(units);
  return {
    text: (key) => String(data[key] ?? ""),
    number: (key) => Number(data[key]),
    show: (key, field) => show(field, Number(data[key])),
  };
}

const input = (w: Words): string =>
  w.text("inputPower") === "" ? "this input" : (inputWords[w.text("inputPower")] ?? w.text("inputPower"));
const inputWords: Readonly<Record<string, string>> = {
  "120V": "120 V",
  "230V": "230 V",
  "400V-3ph": "400 V three-phase",
};

const issueSentences: Readonly<Record<PlanCode, (w: Words) => string>> = {
  "field-needed": (w) => `Say the ${w.text("field")} first.`,
  "process-not-planned": () => "Stick and tungsten are not planned here: a plan reckons from wire feed.",
  "class-not-known": () =>
    "This class is not in our table: copy it off the spool, or take the wire's own data sheet.",
  "class-open": (w) =>
    `${w.text("electrode")} leaves gas or polarity to its maker: take the wire's own data sheet.`,
  "joint-not-planned": () =>
    "An open root is not planned here: what it bears hangs on gap, root face and hand, and we know no figures for it.",
  "no-row": () =>
    "We know no row that pairs feed and volts for this wire, size and gas: take its data sheet.",
  "no-burn-off": () => "What current this wire draws at a feed is not known to us: take its data sheet.",
  "check-objects": () => "The check of the set-up speaks against it.",
  "plate-beyond-input": (w) =>
    `This plate is beyond this socket: ${w.show("value", "thicknessMm")} wants more than ${input(w)} gives with this wire.`,
  "plate-beyond-wire": (w) =>
    `This plate is beyond this wire: even its highest feed is cold on ${w.show("value", "thicknessMm")}.`,
  "plate-too-thin": (w) =>
    `This wire is too hot for ${w.show("value", "thicknessMm")}: even its lowest feed would burn through.`,
  "wire-beyond-input": (w) =>
    `This wire is beyond this socket: even its lowest feed wants more than ${input(w)} gives.`,
  "rows-disagree": () =>
    "The rows for this wire and what it should draw do not agree: no plan rather than a wrong one. Take its data sheet.",
  "single-pass-only": (w) =>
    `${w.text("electrode")} is rated for one pass, which carries about ${w.show("onePassMm", "targetLegMm")}; this leg takes ${w.text("passes")}. Take a multi-pass wire or a smaller leg.`,
};

/** Why there is no plan, in one sentence; where the check objects, in its words. */
export function planIssueSentence({ code, data, path, finding }: PlanIssue, units: UnitPreferences): string {
  if (finding !== null) return findingSentence(finding, showReading(units));
  const field = path[0] as SetupField;
  return issueSentences[code](wordsFor({ ...data, field: fieldInText(field) }, units));
}

const limitSentences: Readonly<Record<LimitCode, (w: Words) => string>> = {
  "feed-limited": (w) => `${endWords[w.text("by")]?.(w) ?? ""}`,
  "out-of-position": () =>
    "Out of position the pool hangs: amperes stand about 35 % under flat (30 to 40 % in the trade).",
  "passes-by-size": (w) =>
    `${w.text("passes")} passes: one carries a leg of about ${w.show("onePassMm", "targetLegMm")} here.`,
  "passes-by-pace": (w) =>
    `${w.text("passes")} passes: in one the hand would crawl below ${w.show("slowMmPerMin", "travelSpeedMmPerMin")}, and the slag run ahead.`,
  "pace-fast": (w) =>
    `This size wants a faster hand than ${w.show("fastMmPerMin", "travelSpeedMmPerMin")}: expect a larger bead, or take a smaller wire.`,
  "pace-unusual": (w) =>
    `The pace lies outside the usual ${spanText(w.show("low", "travelSpeedMmPerMin"), w.show("high", "travelSpeedMmPerMin"))} of a hand: try it on scrap.`,
  "ask-the-machine": (w) =>
    `The arc takes about ${formatQuantity("power", w.number("kW"), "metric")}, more than twice what 120 V holds: see on the machine's plate whether it gives that on 230 V, and how long.`,
  "limited-passes": (w) =>
    `${w.text("electrode")} is meant for a few passes on thin plate and this takes ${w.text("passes")}: ask its data sheet.`,
};

const wanted = (w: Words): string => `the plate wants about ${formatAmps(w.number("wantedAmps"))}`;
const endWords: Readonly<Record<string, (w: Words) => string>> = {
  "row-top": (w) => `The wire's rows end at ${w.show("feedMPerMin", "wireFeedMPerMin")}; ${wanted(w)}.`,
  "amps-top": (w) =>
    `The wire's rows end in amperes at ${w.show("feedMPerMin", "wireFeedMPerMin")}; ${wanted(w)}.`,
  "input-top": (w) =>
    `This socket gives out at about ${w.show("feedMPerMin", "wireFeedMPerMin")}; ${wanted(w)}.`,
  "input-power": (w) =>
    `This socket holds about ${w.show("feedMPerMin", "wireFeedMPerMin")} of this wire (by its arc power); ${wanted(w)}.`,
  "plate-hot": (w) => `The plate bears no more than ${w.show("feedMPerMin", "wireFeedMPerMin")}.`,
  "row-bottom": (w) =>
    `The wire's rows begin at ${w.show("feedMPerMin", "wireFeedMPerMin")}; ${wanted(w)}, keep moving.`,
  "amps-bottom": (w) =>
    `The wire's rows begin in amperes at ${w.show("feedMPerMin", "wireFeedMPerMin")}; ${wanted(w)}, keep moving.`,
  "plate-cold": (w) =>
    `Below ${w.show("feedMPerMin", "wireFeedMPerMin")} the plate stays cold, so the bead grows larger than asked.`,
};

export function limitSentence({ code, data }: Limit, units: UnitPreferences): string {
  return limitSentences[code](wordsFor(data, units));
}

const reasonSentences: Readonly<Record<KnobReason, string>> = {
  plate: "draws the current the plate wants",
  surface: "six tenths of what a joint in this plate wants: the bead need not reach through",
  hand: "as little as a usual hand keeps up with at this size",
  "row-top": "the end of the wire's rows",
  "amps-top": "the end of the wire's amperes",
  "input-top": "as much as this socket gives",
  "input-power": "as much as this socket gives",
  "plate-hot": "as much as the plate bears",
  "row-bottom": "the start of the wire's rows",
  "amps-bottom": "the start of the wire's amperes",
  "plate-cold": "as little as the plate bears",
  "goes-with-feed": "goes with this feed by the wire's rows",
  rows: "as given for this wire",
  "splits-joint": "splits the joint",
  "leaves-leg": "leaves the leg, by the mass of wire and bead",
  "fills-groove": "fills the groove, by the mass of wire and bead",
  "usual-pace": "the usual pace of a hand",
  "hand-slow": "as slow as a hand is asked to go",
  "hand-fast": "as fast as a hand is asked to go",
};

/** Why a knob starts where it does. */
export const knobReason = ({ reason }: Knob): string => reasonSentences[reason];

/** A knob's start in the person's units, and how far it may be turned. */
export function knobText({ field, value, low, high }: Knob, units: UnitPreferences) {
  const show = (si: number) => valueInText(field, si, units);
  return { label: fieldLabel(field), value: show(value), range: spanText(show(low), show(high)) };
}

const wayLead: Readonly<Record<WayCode, (setup: RunSetup, units: UnitPreferences) => string>> = {
  input: ({ inputPower }) => `On ${inputWords[inputPower ?? ""] ?? "a stronger input"}`,
  size: ({ electrodeDiameterMm }, units) =>
    `With ${valueInText("electrodeDiameterMm", electrodeDiameterMm!, units)} wire of this class`,
  wire: ({ electrodeClass, electrodeDiameterMm }, units) =>
    `With ${electrodeClass} ${valueInText("electrodeDiameterMm", electrodeDiameterMm!, units)}`,
  flat: () => "With the work turned flat",
  leg: () => "With the leg one pass leaves",
};

/** One way out: "On 230 V it can be planned." */
export function waySentence({ code, ask }: Way, units: UnitPreferences): string {
  const setup = { ...ask } as unknown as RunSetup;
  return `${wayLead[code](setup, units)} it can be planned.`;
}

/** The thinnest and thickest plate in one line. */
export function platesSentence(
  { thinnestMm, thickestMm }: { readonly thinnestMm: number | null; readonly thickestMm: number | null },
  units: UnitPreferences,
): string {
  const mm = (value: number) => formatLength(value, { system: lengthSystem(units.length) });
  if (thinnestMm === null) return "No plate goes with this wire, joint and input.";
  if (thickestMm === null) return `From ${mm(thinnestMm)} up; thicker plate is filled in passes.`;
  return `From ${mm(thinnestMm)} to ${mm(thickestMm)}.`;
}
