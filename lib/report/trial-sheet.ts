import type { Assessed } from "@/lib/assess";
import { fieldInText, fieldLabel, showReading, spanText } from "@/lib/setup";
import {
  adviceSentence,
  coded,
  effects,
  fitSurface,
  observed,
  offPoint,
  pureError,
  responseRows,
  responsesOf,
  trialState,
  type Advice,
  type BeadResponses,
  type CoursePoint,
  type ResponseName,
  type Trial,
  type TrialRun,
} from "@/lib/trials";
import { formatQuantity, lengthSystem, type UnitPreferences } from "@/lib/units";
import { setupLine } from "./setup-rows";
import { verdictSays } from "./verdict-words";

/** A point of the series with the bead that was run at it; null: not begun, or the bead is not here any more. */
export interface TrialRunInput {
  readonly place: number;
  readonly beadId: string | null;
  readonly bead: (Assessed & { readonly number: number }) | null;
}

export interface TrialRow {
  readonly place: number;
  readonly at: readonly number[];
  readonly settings: string;
  readonly beadId: string | null;
  readonly bead: string;
  readonly reading: string;
  readonly value: number | null;
  readonly others: string;
  readonly verdict: string | null;
  /** What it was run with otherwise than its point, so that it does not count; null: nothing. */
  readonly off: string | null;
}

export interface TrialSheetDocument {
  readonly title: string;
  readonly line: string;
  readonly aim: string;
  readonly next: string;
  readonly advice: Advice;
  /** What may be said of a best; a name only where scatter does not explain it. */
  readonly best: string;
  readonly region: string | null;
  readonly unknown: readonly string[];
  readonly effects: readonly string[];
  readonly rows: readonly TrialRow[];
  readonly course: readonly CoursePoint[];
  readonly knobs: readonly { readonly label: string; readonly low: string; readonly high: string }[];
  readonly responseLabel: string;
}

/** A response in the person's units. */
export function responseText(name: ResponseName, value: number, units: UnitPreferences): string {
  const { unit } = responseRows[name];
  if (unit === "mm") return formatQuantity("modelLength", value, lengthSystem(units.length));
  return unit === "%"
    ? formatQuantity("share", value / 100, "metric")
    : formatQuantity("count", value, "metric");
}

/** The settings of one point in words: "volts 24.5 V, wire feed 7.6 m/min". */
export function settingsText(
  { knobs }: Pick<Trial, "knobs">,
  at: readonly number[],
  units: UnitPreferences,
): string {
  const show = showReading(units);
  return knobs.map(({ field }, i) => `${fieldInText(field)} ${show(field, at[i]!)}`).join(", ");
}

/** Everything a trial says, in words and figures for screen and paper. */
export function trialSheet(
  { content: trial, number }: { readonly content: Trial; readonly number: number },
  inputs: readonly TrialRunInput[],
  units: UnitPreferences,
): TrialSheetDocument {
  const { aim } = trial;
  const runs = runsAsRead(trial, inputs);
  const state = trialState(trial, runs);
  const beads = Math.max(trial.budget, trial.points.length);
  const settings = (at: readonly number[]): string => settingsText(trial, at, units);
  const show = showReading(units);
  return {
    title: `Trial ${number}: ${trial.title}`,
    line: setupLine(trial.base, units),
    aim: aimText(trial, units),
    next: adviceSentence(state.advice, beads, settings),
    advice: state.advice,
    best: bestText(trial, state.standing, units),
    region: regionText(trial, state.course, units),
    unknown: unknownLines(trial, runs, units),
    effects: effectLines(trial, runs, units),
    rows: runs.map((run) =>
      rowOf(run, trial, inputs.find(({ place }) => place === run.place) ?? null, units),
    ),
    course: state.course,
    knobs: trial.knobs.map(({ field, low, high }) => ({
      label: fieldLabel(field),
      low: show(field, low),
      high: show(field, high),
    })),
    responseLabel: responseRows[aim.response].label,
  };
}

/** Each point with what was read on its bead; one that was run with other settings says nothing of its point. */
function runsAsRead(trial: Trial, inputs: readonly TrialRunInput[]): readonly TrialRun[] {
  return trial.points.map((at, place) => {
    const input = inputs.find((one) => one.place === place);
    const bead = input?.bead ?? null;
    const off = bead !== null && offPoint(trial, at, bead.content.setup).length > 0;
    const read = bead === null || off ? null : responsesOf(bead)[trial.aim.response];
    return { place, at, begun: (input?.beadId ?? null) !== null, value: read?.value ?? null, off };
  });
}

function aimText({ aim, noise }: Trial, units: UnitPreferences): string {
  const { label } = responseRows[aim.response];
  const wanted =
    aim.want === "target"
      ? `near ${responseText(aim.response, aim.target!, units)}`
      : aim.want === "least"
        ? "as small as possible"
        : "as large as possible";
  return `${label} ${wanted}. Two beads of one setting are taken to lie ${noiseText(aim.response, noise, units)} apart (one standard deviation, as stated).`;
}

const noiseText = (name: ResponseName, noise: number, units: UnitPreferences): string =>
  name === "marks" ? formatQuantity("tenths", noise, "metric") : responseText(name, noise, units);

function bestText(
  trial: Trial,
  standing: ReturnType<typeof trialState>["standing"],
  units: UnitPreferences,
): string {
  if (standing === null) return "No bead was read yet, so nothing is known of the best.";
  if (!standing.named)
    return "No setting stands out yet: what the beads differ by is what they scatter by. No best is named.";
  const list = (points: readonly (readonly number[])[]): string =>
    points.map((at) => settingsText(trial, at, units)).join("; ");
  const open = standing.together.length > 0 ? ` Not told from it: ${list(standing.together)}.` : "";
  return `Best so far: ${settingsText(trial, standing.leader, units)}. Worse beyond the scatter: ${list(standing.apart)}.${open}`;
}

/** Between which settings the best may lie, each knob by itself. */
function regionText(trial: Trial, course: readonly CoursePoint[], units: UnitPreferences): string | null {
  const region = course.filter(({ mayBeBest }) => mayBeBest);
  if (region.length === 0) return null;
  if (region.length === course.length)
    return "The best may lie anywhere in these ranges, as far as these beads say.";
  const show = showReading(units);
  const spans = trial.knobs.map(({ field }, i) => {
    const values = region.map(({ at }) => at[i]!);
    return `${fieldInText(field)} ${spanText(show(field, Math.min(...values)), show(field, Math.max(...values)))}`;
  });
  return `The best lies within ${spans.join(", ")}, if the course runs as smoothly as it was taken to (95 %).`;
}

function unknownLines(trial: Trial, runs: readonly TrialRun[], units: UnitPreferences): readonly string[] {
  const seen = observed(runs);
  const waiting = runs.filter(({ begun, value, off }) => begun && value === null && !off);
  const off = runs.filter((run) => run.off);
  const distinct = new Set(seen.map(({ at }) => at.join()));
  const { label } = responseRows[trial.aim.response];
  return [
    ...(waiting.length > 0
      ? [`${label} is not read yet on run ${waiting.map(({ place }) => place + 1).join(", ")}.`]
      : []),
    ...(off.length > 0
      ? [
          `Run ${off.map(({ place }) => place + 1).join(", ")} was run with other settings than its point and does not count.`,
        ]
      : []),
    ...(seen.length > 0 && seen.length === distinct.size
      ? [
          `No setting was run twice: the scatter is as stated, ${noiseText(trial.aim.response, trial.noise, units)}, and not measured.`,
        ]
      : []),
    ...lackLine(trial, seen),
    "Nothing is known outside these ranges, or of any other wire, plate, position or machine.",
  ];
}

function lackLine(trial: Trial, seen: ReturnType<typeof observed>): readonly string[] {
  if (trial.way === "seek") return [];
  const points = seen.map(({ at }) => coded(trial.knobs, at));
  const values = seen.map(({ value }) => value);
  const surface = fitSurface(points, values, 2) ?? fitSurface(points, values, 1);
  const lack = surface?.lackOfFit;
  return lack && lack.p < 0.05
    ? [
        "The fitted surface misses beads by more than repeats scatter (95 %): its curve is not the right one here.",
      ]
    : [];
}

/** What turning each knob from end to end does, where both ends were run as a factorial lays them. */
function effectLines(trial: Trial, runs: readonly TrialRun[], units: UnitPreferences): readonly string[] {
  if (trial.way !== "factorial") return [];
  const corners = observed(runs)
    .map(({ at, value }) => ({ x: coded(trial.knobs, at).map((v) => Math.round(v)), value, at }))
    .filter(({ x }) => x.every((v) => Math.abs(v) === 1));
  const found = effects(
    corners.map(({ x }) => x),
    corners.map(({ value }) => value),
    // Repeats of the middle tell the scatter too.
    pureError(observed(runs)),
  );
  const show = showReading(units);
  const { response } = trial.aim;
  const signed = (value: number): string =>
    `${value > 0 ? "+" : value < 0 ? "−" : ""}${responseText(response, Math.abs(value), units)}`;
  return (found?.effects ?? []).map(({ of, value, low, high }) => {
    const what =
      of.length > 1
        ? "Both together beyond their sum"
        : `${fieldLabel(trial.knobs[of[0]!]!.field)} from ${show(trial.knobs[of[0]!]!.field, trial.knobs[of[0]!]!.low)} to ${show(trial.knobs[of[0]!]!.field, trial.knobs[of[0]!]!.high)}`;
    const interval =
      low === null || high === null
        ? "no interval without a repeat"
        : `${signed(low)} to ${signed(high)}, 95 %`;
    return `${what}: ${signed(value)} (${interval}).`;
  });
}

const others: readonly ResponseName[] = ["width", "leg", "convexity", "evenness", "marks"];

function rowOf(run: TrialRun, trial: Trial, input: TrialRunInput | null, units: UnitPreferences): TrialRow {
  const { response } = trial.aim;
  const bead = input?.bead ?? null;
  const responses: BeadResponses | null = bead && responsesOf(bead);
  const verdict = bead?.assessment.verdict;
  const off = bead ? offPoint(trial, run.at, bead.content.setup) : [];
  const show = showReading(units);
  return {
    place: run.place,
    at: run.at,
    settings: settingsText(trial, run.at, units),
    beadId: bead ? input!.beadId : null,
    bead: bead ? `Bead ${bead.number}` : input?.beadId ? "deleted" : "not begun",
    reading:
      run.value === null
        ? off.length > 0
          ? "left out"
          : bead
            ? "not read"
            : ""
        : responseText(response, run.value, units),
    value: run.value,
    others:
      responses === null
        ? ""
        : others
            .flatMap((name) => {
              const read = responses[name];
              return name === response || read === null
                ? []
                : [`${responseRows[name].label.toLowerCase()} ${responseText(name, read.value, units)}`];
            })
            .join(", "),
    verdict: verdict?.ok ? verdictSays(verdict.value).short : null,
    off:
      off.length === 0
        ? null
        : `Run with ${off.map(({ field, value }) => `${fieldInText(field)} ${show(field, value)}`).join(", ")}, so it does not count.`,
  };
}
