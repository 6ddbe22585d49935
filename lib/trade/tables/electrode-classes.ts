import type { Source } from "@/lib/base";
import type { ElectrodeClass, ElectrodePosition, PassRating } from "../electrode-class";
import type { Gas, Polarity } from "../names";
import { cite, commonPractice, remark } from "../cite";

const a51 = cite("aws-a5-1", "memory");
const a518 = cite("aws-a5-18", "memory");
const a520 = cite("aws-a5-20", "memory");
const a522 = cite("aws-a5-22", "memory");
const a54 = cite("aws-a5-4", "memory");
const a59 = cite("aws-a5-9", "memory");
const e309lGasless = cite("e309l-gasless-sheet", "seen");
const e309lBothGases = cite("e309l-both-gases-sheet", "seen");
const e310 = cite("e310-sheet", "seen");
const currentNotes = cite("electrode-current-notes", "seen");
const classTable = cite("flux-cored-class-table", "seen");
const tungstenHandbook = cite("tungsten-arc-handbook", "seen", { clause: "pp. 137-149" });
/** They restate data sheets and AWS tables, so they are no second witness beside those. */
const tradeNotes = cite("trade-reference-notes", "seen");

const FH: readonly ElectrodePosition[] = ["flat", "horizontal"];
const UP: readonly ElectrodePosition[] = ["flat", "horizontal", "vertical-up", "overhead"];
const DOWN: readonly ElectrodePosition[] = ["flat", "horizontal", "vertical-down", "overhead"];
const ALL: readonly ElectrodePosition[] = ["flat", "horizontal", "vertical-up", "vertical-down", "overhead"];

const CO2: readonly Gas[] = ["CO2"];
const MIX: readonly Gas[] = ["75Ar-25CO2", "80Ar-20CO2"];
const EITHER: readonly Gas[] = ["CO2", "75Ar-25CO2", "80Ar-20CO2"];

const DCEN: readonly Polarity[] = ["DCEN"];
const DCEP: readonly Polarity[] = ["DCEP"];

interface Cored {
  readonly polarity: readonly Polarity[];
  readonly positions: readonly ElectrodePosition[];
  readonly passes?: PassRating;
  readonly alsoUsed?: readonly ElectrodePosition[];
  readonly source?: Source;
}

const selfShielded = (id: string, row: Cored): ElectrodeClass => ({
  id,
  standard: "AWS A5.20/A5.36",
  process: "FCAW-S",
  family: "self-shielded-cored",
  gases: ["none"],
  alsoUsed: [],
  passes: "multi",
  metal: "carbon-steel",
  source: classTable,
  ...row,
});

const gasShielded = (id: string, gases: readonly Gas[], row: Cored): ElectrodeClass => ({
  id,
  standard: "AWS A5.20/A5.36",
  process: "FCAW-G",
  family: "gas-shielded-cored",
  gases,
  alsoUsed: [],
  passes: "multi",
  metal: "carbon-steel",
  source: classTable,
  ...row,
});

/** One usability digit in its three spellings: both gases, CO2 (C), argon mix (M). */
const bothGases = (id: string, row: Cored): readonly ElectrodeClass[] => [
  gasShielded(id, EITHER, row),
  gasShielded(`${id}C`, CO2, row),
  gasShielded(`${id}M`, MIX, row),
];

const stainlessCored = (grade: string, digit: string, row: Cored & { gases: readonly Gas[] }) =>
  ({
    id: `E${grade}T${digit}`,
    standard: "AWS A5.22",
    process: row.gases[0] === "none" ? "FCAW-S" : "FCAW-G",
    family: row.gases[0] === "none" ? "stainless-self-shielded-cored" : "stainless-gas-shielded-cored",
    alsoUsed: [],
    passes: "multi",
    metal: "stainless",
    source: a522,
    ...row,
  }) satisfies ElectrodeClass;

/** The five stainless cored forms of one grade; `read` are the sheets read for this grade. */
const stainlessGrade = (
  grade: string,
  read: { gasless: Source; co2: Source; mix: Source },
): readonly ElectrodeClass[] => [
  stainlessCored(grade, "0-3", { gases: ["none"], polarity: DCEP, positions: FH, source: read.gasless }),
  stainlessCored(grade, "1-1", { gases: CO2, polarity: DCEP, positions: UP, source: read.co2 }),
  stainlessCored(grade, "1-4", { gases: MIX, polarity: DCEP, positions: UP, source: read.mix }),
  stainlessCored(grade, "1-1/-4", { gases: EITHER, polarity: DCEP, positions: UP, source: read.co2 }),
  stainlessCored(grade, "0-1", { gases: CO2, polarity: DCEP, positions: FH, source: read.co2 }),
  stainlessCored(grade, "0-4", { gases: MIX, polarity: DCEP, positions: FH, source: read.mix }),
  stainlessCored(grade, "0-1/-4", { gases: EITHER, polarity: DCEP, positions: FH, source: read.co2 }),
];

const asProxy = (source: Source, grade: string) =>
  remark(
    source,
    `read for another grade and applied to ${grade}: polarity, gas and position digits are the same`,
  );

const solidWire = (
  id: string,
  metal: ElectrodeClass["metal"],
  gases: readonly Gas[],
  source: Source,
): ElectrodeClass => ({
  id,
  standard: metal === "stainless" ? "AWS A5.9" : "AWS A5.18",
  process: "GMAW",
  family: metal === "stainless" ? "stainless-solid-wire" : "solid-wire",
  polarity: DCEP,
  gases,
  positions: ALL,
  alsoUsed: [],
  passes: "multi",
  metal,
  source,
});

const rod = (id: string, metal: ElectrodeClass["metal"]): ElectrodeClass => ({
  id,
  standard: metal === "stainless" ? "AWS A5.9" : "AWS A5.18",
  process: "GTAW",
  family: metal === "stainless" ? "stainless-rod" : "rod",
  polarity: DCEN,
  gases: ["Ar"],
  positions: ALL,
  alsoUsed: [],
  passes: "multi",
  metal,
  source: tungstenHandbook,
});

const covered = (
  id: string,
  family: ElectrodeClass["family"],
  polarity: readonly Polarity[],
  row: { positions: readonly ElectrodePosition[]; alsoUsed?: readonly ElectrodePosition[]; source: Source },
): ElectrodeClass => ({
  id,
  standard: family === "stainless-covered" ? "AWS A5.4" : "AWS A5.1",
  process: "SMAW",
  family,
  polarity,
  gases: ["none"],
  alsoUsed: [],
  passes: "multi",
  metal: family === "stainless-covered" ? "stainless" : "carbon-steel",
  ...row,
});

const GMAW_GASES: readonly Gas[] = ["CO2", "75Ar-25CO2", "80Ar-20CO2", "90Ar-10CO2", "98Ar-2O2"];
const STAINLESS_GMAW_GASES: readonly Gas[] = ["90He-7.5Ar-2.5CO2", "98Ar-2CO2", "98Ar-2O2"];

// The class table lists vertical-down only; the trade prints vertical-up settings for these wires as well.
const t11: Cored = {
  polarity: DCEN,
  positions: DOWN,
  alsoUsed: ["vertical-up"],
  passes: "limited",
  source: remark(classTable, "pass limit and vertical-up use: trade reference notes"),
};

export const electrodeClasses: readonly ElectrodeClass[] = [
  selfShielded("E71T-11", t11),
  selfShielded("E70T-11", {
    polarity: DCEN,
    positions: FH,
    passes: "limited",
    source: remark(classTable, "pass limit: trade reference notes"),
  }),
  // The class table leaves GS open; the trade runs it electrode negative, without gas, in one pass.
  selfShielded("E71T-GS", {
    polarity: DCEN,
    positions: ALL,
    passes: "single",
    source: remark(tradeNotes, "polarity is trade practice; the classification does not fix it"),
  }),
  selfShielded("E71T-14", { polarity: DCEN, positions: DOWN, passes: "single" }),
  selfShielded("E71T-13", { polarity: DCEN, positions: DOWN, passes: "single" }),
  selfShielded("E70T-10", { polarity: DCEN, positions: FH, passes: "single" }),
  selfShielded("E71T-8", { polarity: DCEN, positions: UP }),
  selfShielded("E70T-8", { polarity: DCEN, positions: FH }),
  selfShielded("E71T-7", { polarity: DCEN, positions: UP }),
  selfShielded("E70T-7", { polarity: DCEN, positions: FH }),
  selfShielded("E70T-6", { polarity: DCEP, positions: FH }),
  selfShielded("E70T-4", { polarity: DCEP, positions: FH }),
  selfShielded("E70T-3", { polarity: DCEP, positions: FH, passes: "single" }),

  ...bothGases("E71T-1", { polarity: DCEP, positions: UP }),
  ...bothGases("E70T-1", { polarity: DCEP, positions: FH }),
  ...bothGases("E71T-2", { polarity: DCEP, positions: UP, passes: "single" }),
  ...bothGases("E70T-2", { polarity: DCEP, positions: FH, passes: "single" }),
  gasShielded("E70T-5", CO2, { polarity: DCEP, positions: FH }),
  gasShielded("E70T-5C", CO2, { polarity: DCEP, positions: FH }),
  gasShielded("E70T-5M", MIX, { polarity: DCEP, positions: FH, source: a520 }),
  gasShielded("E71T-5", CO2, { polarity: ["DCEP", "DCEN"], positions: UP }),
  gasShielded("E71T-5C", CO2, { polarity: ["DCEP", "DCEN"], positions: UP }),
  gasShielded("E71T-5M", MIX, { polarity: ["DCEP", "DCEN"], positions: UP, source: a520 }),
  ...bothGases("E71T-9", { polarity: DCEP, positions: UP }),
  ...bothGases("E70T-9", { polarity: DCEP, positions: FH, source: a520 }),
  ...bothGases("E71T-12", { polarity: DCEP, positions: UP }),
  ...bothGases("E70T-12", { polarity: DCEP, positions: FH, source: a520 }),

  // Usability G leaves everything to the maker; the table holds it so that its openness is known, not guessed.
  // Filed under FCAW-S only because a row needs one process; with nothing fixed, no rule speaks about it.
  { ...selfShielded("E71T-G", { polarity: [], positions: [] }), gases: [] },
  { ...selfShielded("E70T-G", { polarity: [], positions: [] }), gases: [] },

  ...stainlessGrade("308L", {
    gasless: asProxy(e309lGasless, "E308L"),
    co2: asProxy(e310, "E308L"),
    mix: asProxy(e309lBothGases, "E308L"),
  }),
  ...stainlessGrade("309L", {
    gasless: e309lGasless,
    co2: asProxy(e310, "E309L"),
    mix: e309lBothGases,
  }),
  ...stainlessGrade("310", { gasless: a522, co2: e310, mix: e310 }),
  ...stainlessGrade("316L", { gasless: a522, co2: a522, mix: a522 }),

  solidWire("ER70S-6", "carbon-steel", GMAW_GASES, remark(tradeNotes, "gas list completed from memory")),
  solidWire("ER70S-3", "carbon-steel", GMAW_GASES, a518),
  solidWire("ER308L", "stainless", STAINLESS_GMAW_GASES, a59),
  solidWire("ER309L", "stainless", STAINLESS_GMAW_GASES, a59),
  solidWire("ER316L", "stainless", STAINLESS_GMAW_GASES, a59),

  covered("E6010", "cellulosic", DCEP, { positions: ALL, source: currentNotes }),
  covered("E6011", "cellulosic", ["AC", "DCEP"], {
    positions: ALL,
    source: remark(currentNotes, "vertical-down use from memory"),
  }),
  covered("E6013", "rutile", ["AC", "DCEP", "DCEN"], { positions: ALL, source: a51 }),
  covered("E7014", "iron-powder", ["AC", "DCEN", "DCEP"], { positions: ALL, source: a51 }),
  // E7018 is not run downhill: the slag runs ahead (the -48 rods are made for that).
  covered("E7018", "low-hydrogen", ["DCEP", "AC"], {
    positions: UP,
    source: remark(tradeNotes, "vertical-up only: AWS A5.1 from memory"),
  }),
  covered("E7024", "iron-powder", ["AC", "DCEN", "DCEP"], {
    positions: FH,
    source: remark(tradeNotes, "polarity read; flat and horizontal fillet"),
  }),
  covered("E308L-16", "stainless-covered", ["DCEP", "AC"], { positions: UP, source: a54 }),
  covered("E308L-17", "stainless-covered", ["DCEP", "AC"], { positions: UP, source: a54 }),
  covered("E309L-16", "stainless-covered", ["DCEP", "AC"], { positions: UP, source: a54 }),
  covered("E309L-17", "stainless-covered", ["DCEP", "AC"], { positions: UP, source: a54 }),
  covered("E316L-16", "stainless-covered", ["DCEP", "AC"], { positions: UP, source: a54 }),

  rod("ER70S-2", "carbon-steel"),
  rod("ER70S-6", "carbon-steel"),
  rod("ER308L", "stainless"),
  rod("ER309L", "stainless"),
  rod("ER316L", "stainless"),
];

/** A row rests on this where the trade runs a class outside its list. */
export const alsoUsedSource: Source = remark(
  commonPractice,
  "vertical-up settings for E71T-11 are in print, although the class table lists vertical-down",
);
