import { legForRun, travelForLeg } from "@/lib/arc";
import type { Result } from "@/lib/base";
import { planRun, type Plan, type PlanAsk } from "@/lib/plan";
import type { PlanIssue } from "@/lib/plan/issues";
import {
  checkSetup,
  currentAt,
  HAND_TRAVEL,
  isPositionOut,
  onePass,
  windowFor,
  windowQueryFor,
  wireOf,
  type RunSetup,
} from "@/lib/setup";
import { feedCap, isFillet, voltsAtFeed, windowLines } from "@/lib/trade";

/** A planner, so that the laws can be held against a broken one. */
export type Planner = (ask: PlanAsk) => Result<Plan, PlanIssue>;
export const planner: Planner = planRun;

/** What may stand beside a plan: cautions for the welder, and that the trade goes beyond a printed sheet. */
const mayBeSaid = [
  "chromium-fume",
  "reading-beyond-data-sheet",
  "position-beyond-class-list",
  "limited-pass-wire-in-passes",
  "gap-wide",
  "root-tight",
];

type Law = (plan: Plan, ask: PlanAsk) => readonly string[];

const within = (name: string, value: number | null, low: number, high: number, slack = 1e-6): string[] =>
  value === null || (value >= low - slack && value <= high + slack)
    ? []
    : [`${name} ${value} outside ${low} to ${high}`];

const valueOf = (plan: Plan, code: string) => plan.gives.find((one) => one.code === code);

/** Nothing outside a row, ever: each dial against the rows themselves. */
export const insideRows: Law = ({ setup }) => {
  const query = windowQueryFor(setup)!;
  const window = windowFor(setup)!;
  const feed = setup.wireFeedMPerMin!;
  const covering = windowLines(query).filter(
    ({ feedMPerMin: [low, high] }) => feed >= low - 1e-6 && feed <= high + 1e-6,
  );
  const volts = voltsAtFeed(query, feed);
  const amps = currentAt(setup)!.amps;
  return [
    ...(covering.length === 0 ? [`feed ${feed} in no row`] : []),
    ...(volts === null ? ["no volts at this feed"] : within("volts", setup.volts, volts.low, volts.high)),
    ...(window.ctwdMm === null
      ? ["no tip distance"]
      : within("tip to work", setup.ctwdMm, window.ctwdMm.low, window.ctwdMm.high)),
    ...(window.travelAngleDeg === null
      ? []
      : within("angle", setup.travelAngleDeg, window.travelAngleDeg.low, window.travelAngleDeg.high)),
    ...(window.gasFlowLPerMin === null
      ? []
      : within("flow", setup.gasFlowLPerMin, window.gasFlowLPerMin.low, window.gasFlowLPerMin.high)),
    // A step of the tip distance is worth an ampere or two.
    ...(window.amps === null ? [] : within("amps", amps, window.amps.low, window.amps.high, 3)),
  ];
};

/** The product's own check has nothing against it, whether or not the current is written in, nor against its last pass. */
export const checkIsSilent: Law = ({ setup, passes, notes }) => {
  const amps = currentAt(setup)!.amps;
  const variants: readonly RunSetup[] = [setup, { ...setup, amps }, { ...setup, passCount: passes }];
  const said = variants
    .flatMap(checkSetup)
    .filter(({ severity, code }) => severity !== "note" || !mayBeSaid.includes(code));
  const unsaid = checkSetup(setup).filter(({ code }) => !notes.some((note) => note.code === code));
  return [
    ...said.map(({ code, fields }) => `check: ${code} at ${fields[0]}`),
    ...unsaid.map(({ code }) => `not passed on: ${code}`),
  ];
};

/** Each knob starts within its range and may be turned to either end alone. */
export const rangesHold: Law = ({ knobs, setup }) =>
  knobs.flatMap(({ field, value, low, high }) => [
    ...within(`${field} start`, value, low, high),
    ...(setup[field] === value ? [] : [`${field} is not what is set`]),
    ...[low, high].flatMap((end) =>
      checkSetup({ ...setup, [field]: end })
        .filter(({ severity, code }) => severity !== "note" || !mayBeSaid.includes(code))
        .map(({ code }) => `${field} at ${end}: ${code}`),
    ),
  ]);

/** What the mains holds is never passed. */
export const underInput: Law = ({ setup }) => {
  const { inputPower, process, electrodeDiameterMm, thicknessMm } = setup;
  if (inputPower === null) return [];
  const cap = feedCap(inputPower, process!, electrodeDiameterMm!);
  return [
    ...(cap === null ? [] : within("feed of this input", setup.wireFeedMPerMin, 0, cap.maxWireFeedMPerMin)),
    ...(inputPower === "120V" && thicknessMm! >= 6 ? ["6 mm and more on 120 V"] : []),
  ];
};

/** More than one pass only where one would be larger than a pass carries, or slower than a hand goes. */
export const passesOnlyWhereNeeded: Law = ({ setup, passes, leg }) => {
  if (leg === null || passes === 1) return [];
  const slow = (isPositionOut(setup) ? 0.4 : 0.6) * HAND_TRAVEL.low;
  const fewer = leg.mm / Math.sqrt(passes - 1);
  // A leg 1.27 times what a pass carries is still laid in one; of two and more each keeps to it.
  const tooLarge = fewer > onePass(setup).mm * 1.0001;
  const oneSlow =
    travelForLeg(wireOf(setup)!, setup.wireFeedMPerMin!, leg.mm)!.value * (passes - 1) < slow * 1.01;
  return tooLarge || oneSlow ? [] : [`${passes} passes where ${passes - 1} do`];
};

/** Every figure lies in its interval, and hangs together with the others. */
export const figuresAgree: Law = (plan) => {
  const { setup, gives, passes } = plan;
  const energy = valueOf(plan, "arc-energy")!.value;
  const amps = valueOf(plan, "amps")!.value;
  const byHand = (setup.volts! * amps * 60) / (1000 * setup.travelSpeedMmPerMin!);
  const leg = valueOf(plan, "leg")?.value ?? null;
  const model =
    leg === null
      ? null
      : legForRun({
          wire: wireOf(setup)!,
          feedMPerMin: setup.wireFeedMPerMin!,
          travelMmPerMin: setup.travelSpeedMmPerMin!,
        })!.value;
  return [
    ...gives.flatMap(({ code, value, low, high }) => [
      ...within(code, value, low, high),
      ...(low > 0 && Number.isFinite(high) ? [] : [`${code} is not positive`]),
    ]),
    ...within("arc energy by hand", energy, byHand, byHand),
    ...(leg === null || model === null ? [] : within("leg by mass", leg, model, model)),
    ...(isFillet(setup.joint!) ? within("passes", valueOf(plan, "passes")!.value, passes, passes) : []),
  ];
};

export const laws = {
  insideRows,
  checkIsSilent,
  rangesHold,
  underInput,
  passesOnlyWhereNeeded,
  figuresAgree,
};

/** Every law a plan breaks. */
export function complaints(plan: Plan, ask: PlanAsk): readonly string[] {
  return Object.entries(laws).flatMap(([name, law]) => law(plan, ask).map((text) => `${name}: ${text}`));
}

/**
 * What a neighbour may differ by: a tenth of a millimetre of plate is nothing to a welder. Volts may go with the feed as
 * steeply as on the steepest printed row (E71T-11 .045: 3 V over 60 in/min), and a dial or two beside.
 */
const MOST = { feed: 0.35, volts: 0.3, voltsPerFeed: 3 / (60 * 0.0254), ctwd: 1.01, travelShare: 0.15 };

/** No jump between neighbours, and thicker plate never wants less. */
export function stepComplaints(thinner: Plan, thicker: Plan): readonly string[] {
  const [a, b] = [thinner.setup, thicker.setup];
  const far = (name: string, x: number, y: number, most: number) =>
    Math.abs(x - y) > most ? [`jump: ${name} ${x} to ${y}`] : [];
  const [ampsA, ampsB] = [thinner, thicker].map((plan) => valueOf(plan, "amps")!.value) as [number, number];
  // A further pass shares the same metal out anew: a step of its own.
  if (thinner.passes !== thicker.passes) return [];
  return [
    ...far("feed", a.wireFeedMPerMin!, b.wireFeedMPerMin!, Math.max(MOST.feed, 0.08 * a.wireFeedMPerMin!)),
    ...far(
      "volts",
      a.volts!,
      b.volts!,
      MOST.volts + MOST.voltsPerFeed * (b.wireFeedMPerMin! - a.wireFeedMPerMin!),
    ),
    ...far("tip to work", a.ctwdMm!, b.ctwdMm!, MOST.ctwd),
    ...far(
      "travel",
      a.travelSpeedMmPerMin!,
      b.travelSpeedMmPerMin!,
      MOST.travelShare * a.travelSpeedMmPerMin!,
    ),
    ...(thicker.wantedAmps < thinner.wantedAmps - 1e-9 ? ["thicker plate wants less"] : []),
    ...(b.wireFeedMPerMin! < a.wireFeedMPerMin! - 1e-9
      ? [`thicker plate gets less feed: ${a.wireFeedMPerMin} to ${b.wireFeedMPerMin}`]
      : []),
    // Half a millimetre of tip distance is worth two amperes.
    ...(ampsB < ampsA - 3 ? [`thicker plate gets less current: ${ampsA} to ${ampsB}`] : []),
  ];
}
