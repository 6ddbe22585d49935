import { MM_PER_INCH, type Source } from "@/lib/base";
import { cite, commonPractice, fromMemory, ownEstimate, remark, type Joint } from "@/lib/trade";

/** One figure a plan rests on. */
interface Figure {
  readonly value: number;
  readonly source: Source;
}

/**
 * What a bead laid on the surface wants of the current that a joint in the same plate wants: it need not reach through.
 * The trade's bench point for stringers, 140 A on 6 mm plate, over the ampere rule for 6 mm.
 */
export const surfacingShare: Figure = {
  value: 0.6,
  source: remark(commonPractice, "stringers on 6 mm plate: 140 A, where the ampere rule says 236 A"),
};

/** Stainless holds its heat: it wants 10 to 20 % fewer amperes than carbon steel. */
export const stainlessShare: Figure = {
  value: 0.85,
  source: remark(cite("apprenticeship-notes", "seen"), "given for tungsten, lent to wire", "own-estimate"),
};

/** Between these shares of the ampere rule a plan stays; the check speaks at 0.5 and 1.6, and a dial is read roughly. */
export const plateShares = { least: 0.55, most: 1.5, source: ownEstimate } as const;

/**
 * The slowest and the fastest a hand is asked to travel, as a share of the usual ends (`HAND_TRAVEL`). Out of position the
 * gun weaves or pauses, and its way along the joint is slower.
 */
export const travelShares = { slowLevel: 0.6, slowOut: 0.4, fast: 1.25, source: ownEstimate } as const;

/** Height over width of a bead on plate. */
export const beadShape = {
  heightOverWidth: 0.3,
  /** Of the width, from 0.2 and 0.4 taken instead. */
  relativeError: 0.2,
  source: remark(fromMemory, "up to about 0.3 is called good; low confidence"),
} as const;

/** How far the next bead of a pad is moved over, as a share of the bead's width. */
export const stepOver: Figure = {
  value: 0.6,
  source: remark(commonPractice, "each stringer lies on a third to a half of the one before"),
};

const prequalified = cite("aws-d1-1", "memory", {
  clause: "prequalified groove welds with backing",
  note: "45 degrees with a root opening of 1/4 in; a square butt is opened as wide as it is thick, up to 1/4 in",
});

/** How a groove over backing is cut where nobody said. */
export const grooveShape = {
  includedDeg: 45,
  rootMm: MM_PER_INCH / 4,
  /** A root narrower than that the arc does not reach. */
  leastRootMm: MM_PER_INCH / 8,
  /** Height of the cap. Own estimate. */
  capMm: 1.5,
  /** Of the area: cutting and fit-up. Own estimate. */
  relativeError: 0.1,
  source: prequalified,
} as const;

/** How far a dial may be turned from the start before something else has to be thought over, as a share. */
export const feedRange: Figure = {
  value: 0.1,
  source: remark(fromMemory, "one step of a feed is 5 to 10 %"),
};

/** How far the gun may lean off the line that splits the joint, degrees: within what the check allows. */
export const workAngleRangeDeg: Figure = { value: 10, source: ownEstimate };

/** Mass of a cubic centimetre of weld metal, g. */
export const densities = {
  "carbon-steel": { value: 7.85, source: remark(fromMemory, "7.83 in a handbook of inch units") },
  stainless: { value: 7.95, source: remark(fromMemory, "7.9 to 8.0") },
} as const satisfies Readonly<Record<string, Figure>>;

/** Joints a plan is made for. What an open root bears depends on gap, root face and hand: no figures are known to us. */
export const plannedJoints: readonly Joint[] = [
  "bead-on-plate",
  "stringer-pad",
  "lap",
  "tee",
  "outside-corner",
  "butt-backed",
  "groove-backed",
];

/** The steps a dial or a hand is set in. */
export const dialSteps = {
  metric: {
    wireFeedMPerMin: 0.1,
    volts: 0.1,
    ctwdMm: 0.5,
    travelSpeedMmPerMin: 5,
    travelAngleDeg: 5,
    gasFlowLPerMin: 0.5,
  },
  inch: {
    wireFeedMPerMin: (5 * MM_PER_INCH) / 1000,
    volts: 0.1,
    ctwdMm: MM_PER_INCH / 32,
    travelSpeedMmPerMin: 0.5 * MM_PER_INCH,
    travelAngleDeg: 5,
    gasFlowLPerMin: 28.316846592 / 60,
  },
} as const;
