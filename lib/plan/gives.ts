import type { Source } from "@/lib/base";
import { arcEnergyKJPerMm, heatFactors, metalRate, passAreaMm2, ranged, type Ranged } from "@/lib/arc";
import { currentAt, legAt, wireOf, type RunSetup } from "@/lib/setup";
import { cite, ownEstimate, remark, together, withoutDocument } from "@/lib/trade";
import type { PlanAsk } from "./ask";
import type { Chosen } from "./choose";
import type { Size } from "./size";
import { beadShape, densities, stepOver } from "./tables/figures";

export const givenCodes = [
  "amps",
  "arc-power",
  "arc-energy",
  "heat-input",
  "leg",
  "leg-in-all",
  "bead-width",
  "step-over",
  "deposition",
  "passes",
  "arc-time",
  "wire-mass",
  "wire-length",
  "gas",
] as const;
export type GivenCode = (typeof givenCodes)[number];
export const givenUnits = {
  amps: "A",
  "arc-power": "kW",
  "arc-energy": "kJ/mm",
  "heat-input": "kJ/mm",
  leg: "mm",
  "leg-in-all": "mm",
  "bead-width": "mm",
  "step-over": "mm",
  deposition: "kg/h",
  passes: "count",
  "arc-time": "min",
  "wire-mass": "kg",
  "wire-length": "m",
  gas: "L",
} as const satisfies Readonly<Record<GivenCode, string>>;

/** What comes of a plan. Between `low` and `high` the truth is to be expected; a count is exact. */
export interface Given {
  readonly code: GivenCode;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: (typeof givenUnits)[GivenCode];
  readonly source: Source;
}

const massBalance = withoutDocument(
  "mass balance of wire and bead, deposition efficiency from a filler-metal handbook, fill from memory",
  "derived",
);
const arcEnergySource = cite("iso-tr-18491", "seen-part", { note: "volts · amps / travel" });
/** A travel and a voltage that are set are held no closer. Own estimates. */
const HELD = { travel: 0.05, volts: 0.03 } as const;
/** What minutes and wire are counted for where no length is given, mm. */
const A_METRE = 1000;

const given = (
  code: GivenCode,
  { value, low, high }: Pick<Ranged, "value" | "low" | "high">,
  source: Source,
): Given => ({
  code,
  value,
  low,
  high,
  unit: givenUnits[code],
  source,
});
const exactly = (value: number) => ({ value, low: value, high: value });
const times = ({ value, relativeError }: Ranged, factor: number, error = 0): Ranged =>
  ranged(value * factor, Math.hypot(relativeError, error));

/** Everything a plan gives, by the forward model; the dials as they are set, not as they were aimed at. */
export function givesOf(chosen: Chosen, size: Size, ask: PlanAsk): readonly Given[] {
  return [...heatOf(chosen.setup), ...beadOf(chosen, size), ...spentOn(chosen, ask, size)];
}

function heatOf(setup: RunSetup): readonly Given[] {
  const current = currentAt(setup)!;
  const amps = ranged(current.amps, current.highAmps / current.amps - 1);
  const volts = setup.volts!;
  const power = times(amps, volts / 1000, HELD.volts);
  const { k, source } = heatFactors[setup.process!];
  const travelMmPerS = setup.travelSpeedMmPerMin! / 60;
  const energy = arcEnergyKJPerMm({ volts, amps: amps.value, travelMmPerS });
  const perMm = ranged(energy, Math.hypot(power.relativeError, HELD.travel));
  return [
    given("amps", amps, current.source),
    given("arc-power", power, current.source),
    given("arc-energy", perMm, together([arcEnergySource, current.source])),
    given("heat-input", times(perMm, k), together([source, current.source])),
  ];
}

function beadOf({ setup, passes }: Chosen, size: Size): readonly Given[] {
  const { wireFeedMPerMin: feed, travelSpeedMmPerMin: travel } = setup;
  const leg = legAt(setup, feed, travel);
  if (leg !== null)
    return [
      given("leg", leg, massBalance),
      ...(passes > 1 ? [given("leg-in-all", times(leg, Math.sqrt(passes)), massBalance)] : []),
    ];
  if (size.kind !== "surface") return [];
  const width = widthOf(setup);
  const shape = together([massBalance, beadShape.source]);
  return [
    given("bead-width", width, shape),
    ...(setup.joint === "stringer-pad"
      ? [given("step-over", times(width, stepOver.value), together([shape, stepOver.source]))]
      : []),
  ];
}

/** A flat parabola over the metal of one pass, as high as beads usually are, mm. */
export function widthOf(setup: RunSetup): Ranged {
  const area = passAreaMm2({
    wire: wireOf(setup)!,
    feedMPerMin: setup.wireFeedMPerMin!,
    travelMmPerMin: setup.travelSpeedMmPerMin!,
  })!;
  const value = Math.sqrt((1.5 * area.value) / beadShape.heightOverWidth);
  return ranged(value, Math.hypot(area.relativeError / 2, beadShape.relativeError));
}

/** Beads side by side on a pad, for a bead of this width, mm. */
export function beadsForPad(padWidthMm: number, widthMm: number): number {
  return 1 + Math.max(0, Math.ceil((padWidthMm - widthMm) / (stepOver.value * widthMm) - 0.05));
}

/** Beads of a plan: passes of a joint, or beads beside each other on a pad. */
function runsOf({ setup, passes }: Chosen, ask: PlanAsk, size: Size): Pick<Given, "value" | "low" | "high"> {
  if (size.kind !== "surface" || ask.padWidthMm === null || setup.joint !== "stringer-pad")
    return exactly(passes);
  const { value, low, high } = widthOf(setup);
  const [most, least] = [beadsForPad(ask.padWidthMm, low), beadsForPad(ask.padWidthMm, high)];
  return { value: beadsForPad(ask.padWidthMm, value), low: least, high: most };
}

function spentOn(chosen: Chosen, ask: PlanAsk, size: Size): readonly Given[] {
  const { setup } = chosen;
  const runs = runsOf(chosen, ask, size);
  const metal = setup.baseMetal === "stainless" ? densities.stainless : densities["carbon-steel"];
  const rate = metalRate(wireOf(setup)!, setup.wireFeedMPerMin!, metal.value)!;
  const perRun = (ask.weldLengthMm ?? A_METRE) / setup.travelSpeedMmPerMin!;
  const scaled = (each: Ranged) => ({
    value: each.value * runs.value,
    low: each.low * runs.low,
    high: each.high * runs.high,
  });
  const minutes = ranged(perRun, HELD.travel);
  const massSource = together([massBalance, metal.source]);
  const travelOnly = remark(
    ownEstimate,
    "length over travel, arc time only; stops, chipping and moving come on top",
  );
  return [
    given("deposition", rate.depositKgPerH, massSource),
    given("passes", runs, massBalance),
    given("arc-time", scaled(minutes), travelOnly),
    given("wire-mass", scaled(times(rate.meltOffKgPerH, perRun / 60, HELD.travel)), massSource),
    given("wire-length", scaled(times(minutes, setup.wireFeedMPerMin!)), travelOnly),
    ...(setup.gasFlowLPerMin === null
      ? []
      : [given("gas", scaled(times(minutes, setup.gasFlowLPerMin)), travelOnly)]),
  ];
}
