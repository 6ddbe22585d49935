import { applyChange, proposal, type Assessed } from "@/lib/assess";
import type { Change } from "@/lib/diagnose";
import { travelSpeed, type RunSetup } from "@/lib/setup";
import { otherUnits, type UnitPreferences } from "@/lib/units";
import { changeText, settableChange } from "./amount-text";
import { answerWords, becauseLine, expectLine, type AnswerWords } from "./answer-words";
import { cautionLines } from "./caution-lines";
import { dayText } from "./day-text";
import { setupRows } from "./setup-rows";
import type { SheetBead } from "./sheet";

export interface BenchSetting {
  readonly label: string;
  /** In the reader's units, then in the others where those read differently. */
  readonly values: readonly string[];
  /** Not as it was for the bead just run. */
  readonly isChanged: boolean;
}

/** What goes to the bench after a bead: the one change, and everything as it is to be set for the next one. */
export interface BenchCardDocument {
  readonly number: number;
  readonly revision: number;
  readonly title: string;
  readonly day: string;
  readonly inspectorFirst: boolean;
  /** The change in words, or why there is none. */
  readonly headline: string;
  /** How far to go, in the reader's units and in the others; empty where there is nothing to turn. */
  readonly steps: readonly string[];
  /** Because of what and how sure, and what to expect of it, a line each; empty without a change. */
  readonly grounds: readonly string[];
  readonly settings: readonly BenchSetting[];
  readonly cautions: readonly string[];
}

const NO_CHANGE = "No change proposed: run it as it was.";
const NOT_YET = "Nothing is changed until an inspector has seen the bead.";

/** The card for the bench. Settings are those of the next bead, the change already in them. */
export function benchCard(bead: Assessed<SheetBead>, units: UnitPreferences): BenchCardDocument {
  const { content } = bead;
  const { diagnosis: found, evidence } = bead.assessment;
  const diagnosis = found.ok ? found.value : null;
  const change = (diagnosis && proposal(diagnosis)?.first) ?? null;
  const inspectorFirst = diagnosis?.cautions.some(({ level }) => level === "stop") ?? false;
  return {
    number: bead.number,
    revision: bead.revision,
    title: content.title,
    day: dayText(bead.createdAt),
    inspectorFirst,
    headline: change ? change.sentence : inspectorFirst ? NOT_YET : NO_CHANGE,
    steps: change ? different([units, otherUnits(units)].map((one) => changeText(change, one))) : [],
    settings: benchSettings(content.setup, change, units),
    grounds: change && diagnosis ? groundLines(answerWords({ evidence, diagnosis }, change, units)) : [],
    cautions: cautionLines(diagnosis),
  };
}

const groundLines = (answer: AnswerWords): readonly string[] =>
  [becauseLine(answer), expectLine(answer)].filter((line) => line !== "");

const different = (texts: readonly string[]): readonly string[] =>
  [...new Set(texts)].filter((text) => text !== "");

function benchSettings(
  setup: RunSetup,
  change: Change | null,
  units: UnitPreferences,
): readonly BenchSetting[] {
  const was = toRun(setup);
  const next = change ? toRun(applyChange(was, settableChange(change, units))) : was;
  const before = new Map(setupRows(was, units).map(({ label, value }) => [label, value]));
  const others = new Map(setupRows(next, otherUnits(units)).map(({ label, value }) => [label, value]));
  return setupRows(next, units).map(({ label, value }) => ({
    label,
    values: different([value, others.get(label) ?? ""]),
    isChanged: before.get(label) !== value,
  }));
}

/** What one sets and runs by: a speed that came from length and time stays, the length and the time do not. */
function toRun(setup: RunSetup): RunSetup {
  const travelSpeedMmPerMin = travelSpeed(setup)?.mmPerMin ?? null;
  return { ...setup, travelSpeedMmPerMin, weldLengthMm: null, arcTimeS: null };
}
