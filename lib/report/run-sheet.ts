import {
  givenText,
  knobReason,
  knobText,
  limitSentence,
  secondsFor25mm,
  type Plan,
  type PlanAsk,
} from "@/lib/plan";
import { findingSentence, showReading, sourceDoubt, type RunSetup } from "@/lib/setup";
import { isFillet } from "@/lib/trade";
import { MM_PER_INCH } from "@/lib/base";
import { formatQuantity, otherUnits, type UnitPreferences } from "@/lib/units";
import { cautionLines } from "./caution-lines";
import { fillDrawing } from "./fill-drawing";
import { travelDrawing, workDrawing, type GunDrawing } from "./gun-drawings";
import { setupLine, setupRows, type LabelledRow } from "./setup-rows";

/** One number to set, as the sheet says it. */
export interface RunDial {
  readonly label: string;
  /** In the reader's units, then in the others where those read differently. */
  readonly values: readonly string[];
  readonly range: string;
  /** Why it starts there, and how far the source may be trusted. */
  readonly why: string;
}

/** What goes to the bench before a run: everything to set, large, the pace, the angles, what comes of it. */
export interface RunSheetDocument {
  readonly title: string;
  readonly line: string;
  /** What is put right once: wire, pole, gas, joint, plate, input. */
  readonly fixed: readonly LabelledRow[];
  readonly dials: readonly RunDial[];
  readonly pace: RunPace;
  readonly drawings: readonly GunDrawing[];
  readonly gives: readonly {
    readonly label: string;
    readonly value: string;
    readonly range: string | null;
  }[];
  /** What holds it back, and what the check has to say beside it. */
  readonly limits: readonly string[];
  readonly cautions: readonly string[];
}

export interface RunPace {
  /** "6.4 s": for each 25 mm, or for each inch where the reader measures so. */
  readonly seconds: string;
  readonly secondsExactly: number;
  readonly length: string;
}

const once: readonly string[] = [
  "Wire or rod",
  "Polarity",
  "Shielding gas",
  "Joint",
  "Position",
  "Plate",
  "Mains input",
  "Metal transfer",
];

/** The sheet of a plan, in the reader's units with the others beside. */
export function runSheet(plan: Plan, ask: PlanAsk, units: UnitPreferences): RunSheetDocument {
  const { setup } = plan;
  return {
    title: "Run sheet",
    line: setupLine(setup, units),
    fixed: setupRows({ ...setup, gasFlowLPerMin: null }, units).filter(({ label }) => once.includes(label)),
    dials: plan.knobs.map((knob) => dialOf(knob, units)),
    pace: paceOf(setup, units),
    drawings: [...drawingsOf(setup), ...(fillDrawing(plan) === null ? [] : [fillDrawing(plan)!])],
    gives: [...givesFor(ask, units), ...plan.gives.map((one) => givenText(one, units))],
    limits: [
      ...plan.limits.map((limit) => limitSentence(limit, units)),
      ...plan.notes.map((note) => findingSentence(note, showReading(units))),
    ],
    cautions: cautionLines(null),
  };
}

function dialOf(knob: Plan["knobs"][number], units: UnitPreferences): RunDial {
  const { label, value, range } = knobText(knob, units);
  const other = knobText(onTape(knob), otherUnits(units)).value;
  const doubt = sourceDoubt(knob.source);
  return {
    label,
    values: other === value ? [value] : [value, other],
    range,
    why: `${knobReason(knob)}${doubt ? ` (${doubt})` : ""}`,
  };
}

/** A distance in the other units as a tape reads it: to a sixteenth, or half a millimetre. */
const onTape = (knob: Plan["knobs"][number]): Plan["knobs"][number] =>
  knob.field === "ctwdMm" ? { ...knob, value: Math.round(knob.value / SIXTEENTH) * SIXTEENTH } : knob;
const SIXTEENTH = MM_PER_INCH / 16;

function paceOf({ travelSpeedMmPerMin }: RunSetup, units: UnitPreferences): RunPace {
  // An inch is a little more than 25 mm, and takes that much longer.
  const each = units.length === "in" ? MM_PER_INCH / 25 : 1;
  const seconds = each * secondsFor25mm(travelSpeedMmPerMin!);
  return {
    seconds: formatQuantity("seconds", seconds, "metric"),
    secondsExactly: seconds,
    length: units.length === "in" ? "each inch" : "each 25 mm",
  };
}

function drawingsOf({
  travelAngleDeg,
  travelDirection,
  workAngleDeg,
  joint,
}: RunSetup): readonly GunDrawing[] {
  return [
    ...(travelAngleDeg === null || travelDirection === null
      ? []
      : [travelDrawing(travelAngleDeg, travelDirection)]),
    ...(workAngleDeg === null ? [] : [workDrawing(workAngleDeg, joint !== null && isFillet(joint))]),
  ];
}

/** What the figures are counted for. */
function givesFor({ weldLengthMm }: PlanAsk, units: UnitPreferences) {
  const value =
    weldLengthMm === null
      ? units.length === "in"
        ? "1 m (39 in)"
        : "1 m"
      : showReading(units)("weldLengthMm", weldLengthMm);
  return [{ label: "For a weld of", value, range: null }];
}
