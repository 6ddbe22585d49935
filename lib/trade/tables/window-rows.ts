import type { Source } from "@/lib/base";
import type { ElectrodePosition } from "../electrode-class";
import type { Gas, Transfer } from "../names";
import { cite, commonPractice, fromMemory, ownEstimate, remark } from "../cite";

const apprenticeship = cite("apprenticeship-notes", "seen");
const e309lGasless = cite("e309l-gasless-sheet", "seen");
const e310 = cite("e310-sheet", "seen");
const currentNotes = cite("electrode-current-notes", "seen");
const tungstenHandbook = cite("tungsten-arc-handbook", "seen", { clause: "pp. 137-149" });
const modernWelding = cite("modern-welding", "seen-part", {
  note: "the excerpt ends before its gas note, so the rows lean to CO2",
});
const bestPractices = cite("self-shielded-best-practices", "seen");
/** They restate data sheets and AWS tables, so they are no second witness beside those. */
const tradeNotes = cite("trade-reference-notes", "seen");
const dataCard = cite("solid-wire-data-card", "seen");
const wireManual = cite("small-wire-manual-settings", "seen");

export type Span = readonly [low: number, high: number];

/**
 * One line of a published table, in the units it was printed in: low feed, volts and amps belong together, and so do the
 * high ones. Lines that disagree stand side by side; nobody averages them. A field left out is one the document does not
 * give, or does not give for these feeds.
 */
export interface WindowRow {
  /** Class ids this line holds for. */
  readonly classes: readonly string[];
  /** Electrode diameters in inches; empty: any diameter. */
  readonly diametersIn: readonly number[];
  readonly gases?: readonly Gas[];
  readonly transfer?: Transfer;
  /** Given: the line holds only there, and replaces the general lines for the quantities it gives. */
  readonly positions?: readonly ElectrodePosition[];
  /** With `positions`: the line stands beside the general ones instead. */
  readonly beside?: true;
  /** The document prints settings for other positions too: its own ratios say what is left of the line there. */
  readonly ownPositionSettings?: true;
  /** The ends of its amps do not go with the ends of its feed: they are the class's span and no more. */
  readonly ampsUnpaired?: true;
  readonly wireFeedIpm?: Span;
  readonly volts?: Span;
  readonly amps?: Span;
  readonly ctwdIn?: Span;
  /** Off perpendicular: drag on slag processes, push on solid wire. */
  readonly travelAngleDeg?: Span;
  readonly gasFlowCfh?: Span;
  readonly source: Source;
}

const T11 = ["E71T-11", "E70T-11"];
const GS = ["E71T-GS"];
const T1 = ["E71T-1", "E71T-1C", "E71T-1M", "E70T-1", "E70T-1C", "E70T-1M"];
const LT1 = ["308L", "309L", "310", "316L"].flatMap((grade) =>
  ["T1-1", "T1-4", "T1-1/-4", "T0-1", "T0-4", "T0-1/-4"].map((digits) => `E${grade}${digits}`),
);
const LT3 = ["308L", "309L", "310", "316L"].map((grade) => `E${grade}T0-3`);
const SELF_SHIELDED = [...T11, ...GS, "E71T-14", "E71T-13", "E70T-10", "E71T-8", "E70T-8", "E71T-7"].concat([
  "E70T-7",
  "E70T-6",
  "E70T-4",
  "E70T-3",
]);
const S6 = ["ER70S-6", "ER70S-3"];
const COVERED = ["E6010", "E6011", "E6013", "E7014", "E7018", "E7024"];
const RODS = ["ER70S-2", "ER70S-6", "ER308L", "ER309L", "ER316L"];

const MIX = ["75Ar-25CO2", "80Ar-20CO2"] as const;
const CO2 = ["CO2"] as const;

const LOW_MEMORY = remark(fromMemory, "low confidence");
const LEVEL: readonly ElectrodePosition[] = ["flat", "horizontal"];
const OUT: readonly ElectrodePosition[] = ["vertical-up", "vertical-down", "overhead"];

const selfShieldedCarbon: readonly WindowRow[] = [
  {
    classes: T11,
    diametersIn: [0.03],
    wireFeedIpm: [40, 200],
    volts: [13, 15],
    ctwdIn: [0.5, 0.5],
    source: tradeNotes,
  },
  {
    classes: T11,
    diametersIn: [0.035],
    ownPositionSettings: true,
    wireFeedIpm: [50, 110],
    volts: [14, 16.5],
    amps: [30, 120],
    ctwdIn: [0.5, 0.5],
    source: remark(tradeNotes, "typical range of the notes"),
  },
  {
    classes: T11,
    diametersIn: [0.035],
    wireFeedIpm: [50, 300],
    volts: [13, 16],
    ctwdIn: [0.5, 0.75],
    source: remark(tradeNotes, "one data sheet restated in the notes; tip to work as for small wire"),
  },
  {
    // Two bench points of the trade: 245 in/min at 16.5 V (about 140 A), 400 in/min at 19 to 20 V (about 200 A).
    classes: T11,
    diametersIn: [0.035],
    positions: LEVEL,
    beside: true,
    wireFeedIpm: [245, 400],
    volts: [16.5, 20],
    amps: [140, 200],
    ctwdIn: [0.75, 1],
    source: commonPractice,
  },
  {
    classes: T11,
    diametersIn: [0.035],
    positions: OUT,
    beside: true,
    wireFeedIpm: [150, 240],
    volts: [14.5, 16.5],
    amps: [110, 150],
    ctwdIn: [0.625, 0.75],
    source: remark(ownEstimate, "the bench points 30 to 40 % down, volts along their line, amps by burn-off"),
  },
  {
    classes: T11,
    diametersIn: [0.045],
    ownPositionSettings: true,
    wireFeedIpm: [70, 130],
    volts: [15, 18],
    amps: [120, 170],
    ctwdIn: [0.75, 0.75],
    source: tradeNotes,
  },
  {
    classes: T11,
    diametersIn: [0.068],
    ownPositionSettings: true,
    wireFeedIpm: [40, 175],
    volts: [15, 23],
    amps: [120, 320],
    ctwdIn: [0.75, 1],
    source: tradeNotes,
  },
  {
    classes: GS,
    diametersIn: [0.03, 0.035],
    ampsUnpaired: true,
    wireFeedIpm: [70, 300],
    volts: [14, 18],
    amps: [40, 150],
    ctwdIn: [0.375, 0.625],
    source: LOW_MEMORY,
  },
  {
    classes: ["E71T-14"],
    diametersIn: [0.045],
    wireFeedIpm: [50, 130],
    volts: [14, 18],
    ctwdIn: [0.375, 0.75],
    source: LOW_MEMORY,
  },
  ...(
    [
      [0.0625, [110, 320], [18, 25]],
      [0.068, [100, 320], [17, 25]],
      [0.072, [80, 290], [16, 24]],
      [0.078125, [60, 250], [16, 23]],
    ] as const
  ).map(([diameterIn, wireFeedIpm, volts]): WindowRow => ({
    classes: ["E71T-8", "E70T-8"],
    diametersIn: [diameterIn],
    ampsUnpaired: true,
    wireFeedIpm,
    volts,
    amps: [130, 350],
    ctwdIn: [0.5, 1],
    source: remark(fromMemory, "one span of amps for all sizes; feed falls as size grows"),
  })),
  {
    classes: ["E71T-7", "E70T-7"],
    diametersIn: [0.068, 0.072, 0.078125],
    ampsUnpaired: true,
    wireFeedIpm: [80, 250],
    volts: [18, 26],
    amps: [150, 350],
    ctwdIn: [0.75, 1.25],
    source: LOW_MEMORY,
  },
  {
    classes: ["E70T-7"],
    diametersIn: [0.09375],
    ampsUnpaired: true,
    wireFeedIpm: [75, 300],
    volts: [20, 31],
    amps: [200, 500],
    ctwdIn: [1, 1.5],
    source: LOW_MEMORY,
  },
  {
    classes: ["E70T-6"],
    diametersIn: [0.078125, 0.09375],
    ampsUnpaired: true,
    wireFeedIpm: [150, 350],
    volts: [21, 33],
    amps: [250, 525],
    ctwdIn: [1.5, 2.25],
    source: LOW_MEMORY,
  },
  {
    classes: ["E70T-4"],
    diametersIn: [0.09375, 0.12],
    ampsUnpaired: true,
    wireFeedIpm: [110, 275],
    volts: [28, 34],
    amps: [300, 550],
    ctwdIn: [2, 3.75],
    source: LOW_MEMORY,
  },
  { classes: SELF_SHIELDED, diametersIn: [], travelAngleDeg: [10, 20], source: tradeNotes },
  {
    classes: SELF_SHIELDED,
    diametersIn: [],
    positions: ["flat", "horizontal"],
    travelAngleDeg: [15, 45],
    source: bestPractices,
  },
  {
    classes: SELF_SHIELDED,
    diametersIn: [],
    positions: ["flat", "horizontal"],
    travelAngleDeg: [10, 20],
    source: tradeNotes,
  },
  {
    classes: SELF_SHIELDED,
    diametersIn: [],
    positions: ["flat", "horizontal"],
    travelAngleDeg: [15, 25],
    source: commonPractice,
  },
  {
    classes: SELF_SHIELDED,
    diametersIn: [],
    positions: ["vertical-up"],
    travelAngleDeg: [5, 15],
    source: bestPractices,
  },
];

const T1_CO2_NOTE = remark(
  modernWelding,
  "volts and amps printed; the feed is the one that gives those amps by burn-off",
);
const T1_MIX_NOTE = remark(
  fromMemory,
  "the CO2 line less 1.5 to 2 V; 2 V is printed for stainless wire, carbon steel from memory",
);
const T1_SHEETS = remark(fromMemory, "usual figures of data sheets");

/** The printed CO2 line and the argon-mix line beside it. */
const t1 = (diameterIn: number, volts: Span, amps: Span, wireFeedIpm: Span): readonly WindowRow[] => [
  { classes: T1, diametersIn: [diameterIn], gases: CO2, wireFeedIpm, volts, amps, source: T1_CO2_NOTE },
  {
    classes: T1,
    diametersIn: [diameterIn],
    gases: MIX,
    wireFeedIpm,
    volts: [volts[0] - 2, volts[1] - 1.5],
    amps,
    source: T1_MIX_NOTE,
  },
];
/** What sheets usually give, feed by feed, in CO2 and in argon mix. */
const t1Sheet = (
  diameterIn: number,
  wireFeedIpm: Span,
  amps: Span,
  volts: { readonly co2: Span; readonly mix: Span },
): readonly WindowRow[] => [
  {
    classes: T1,
    diametersIn: [diameterIn],
    gases: CO2,
    wireFeedIpm,
    volts: volts.co2,
    amps,
    source: T1_SHEETS,
  },
  {
    classes: T1,
    diametersIn: [diameterIn],
    gases: MIX,
    wireFeedIpm,
    volts: volts.mix,
    amps,
    source: T1_SHEETS,
  },
];
/** Printed without a feed, and no feed of this wire gives such amps: the line is a span, and pairs with nothing. */
const t1Unpaired = (diameterIn: number, volts: Span, amps: Span): readonly WindowRow[] => [
  { classes: T1, diametersIn: [diameterIn], gases: CO2, volts, amps, source: modernWelding },
  {
    classes: T1,
    diametersIn: [diameterIn],
    gases: MIX,
    volts: [volts[0] - 2, volts[1] - 1.5],
    amps,
    source: T1_MIX_NOTE,
  },
];

const gasShieldedCarbon: readonly WindowRow[] = [
  ...t1Unpaired(0.035, [26, 32], [150, 250]),
  ...t1Sheet(0.035, [250, 620], [105, 190], { co2: [23.5, 30], mix: [22, 28.5] }),
  ...t1(0.045, [24, 28], [150, 250], [210, 440]),
  ...t1Sheet(0.045, [175, 500], [130, 275], { co2: [24, 30], mix: [22.5, 28.5] }),
  ...t1(0.052, [24, 28], [200, 350], [215, 475]),
  ...t1(0.0625, [25, 30], [225, 375], [190, 380]),
  ...t1Sheet(0.0625, [150, 300], [185, 315], { co2: [24, 29], mix: [22.5, 27.5] }),
  {
    classes: T1,
    diametersIn: [0.045],
    positions: ["vertical-up"],
    wireFeedIpm: [180, 300],
    volts: [22, 25.5],
    source: fromMemory,
  },
  { classes: T1, diametersIn: [], ctwdIn: [0.75, 1], gasFlowCfh: [35, 50], source: apprenticeship },
  { classes: T1, diametersIn: [], travelAngleDeg: [5, 20], source: tradeNotes },
  { classes: T1, diametersIn: [], travelAngleDeg: [15, 25], source: modernWelding },
];

const LT1_NOTE = remark(
  e310,
  "printed for E310T-1, used for the other grades; distance printed as stick-out",
);
const LT1_MIX_NOTE = remark(LT1_NOTE, "the CO2 line less 2 V, as the sheet says; printed for E310T-1");

const lt1 = (
  diameterIn: number,
  given: { feed: Span; volts: Span; amps: Span; ctwd: Span; flow: Span },
): readonly WindowRow[] => {
  const shared = {
    classes: LT1,
    diametersIn: [diameterIn],
    wireFeedIpm: given.feed,
    amps: given.amps,
    ctwdIn: given.ctwd,
    gasFlowCfh: given.flow,
  };
  return [
    { ...shared, gases: CO2, volts: given.volts, source: LT1_NOTE },
    { ...shared, gases: MIX, volts: [given.volts[0] - 2, given.volts[1] - 2], source: LT1_MIX_NOTE },
  ];
};

const LT3_NOTE = remark(
  e309lGasless,
  "printed for E309LT0-3, used for the other grades; distance printed as stick-out",
);
const lt3 = (diameterIn: number, wireFeedIpm: Span, volts: Span, amps: Span, ctwdIn: Span): WindowRow => ({
  classes: LT3,
  diametersIn: [diameterIn],
  wireFeedIpm,
  volts,
  amps,
  ctwdIn,
  source: LT3_NOTE,
});

const stainlessCored: readonly WindowRow[] = [
  ...lt1(0.035, { feed: [275, 700], volts: [24, 28], amps: [105, 170], ctwd: [0.625, 0.75], flow: [35, 45] }),
  ...lt1(0.045, { feed: [240, 750], volts: [25, 34], amps: [135, 245], ctwd: [0.625, 0.75], flow: [40, 50] }),
  ...lt1(0.0625, { feed: [155, 320], volts: [25, 30], amps: [170, 315], ctwd: [0.75, 1], flow: [40, 50] }),
  {
    classes: LT1,
    diametersIn: [0.045],
    gases: CO2,
    volts: [24, 28],
    amps: [150, 220],
    source: tradeNotes,
  },
  lt3(0.035, [300, 700], [25, 28], [110, 175], [0.625, 0.75]),
  lt3(0.045, [180, 500], [24, 31], [100, 190], [0.625, 0.75]),
  lt3(0.0625, [150, 350], [27, 33], [125, 240], [0.75, 1]),
  {
    // The trade's own point for 0.9 mm: 16 mm stick-out, about 15 degrees of drag.
    classes: LT3,
    diametersIn: [],
    travelAngleDeg: [10, 20],
    source: remark(commonPractice, "about 15 degrees, 5 allowed either side"),
  },
  {
    classes: LT1,
    diametersIn: [],
    travelAngleDeg: [5, 20],
    source: remark(tradeNotes, "given for slag-bearing cored wire in general"),
  },
];

// Printed for CO2 or 75/25 (short arc) and 80 % argon or more (spray). The rows hold for the transfer whatever the gas:
// a gas that cannot carry the transfer is a fault of its own, and must not make the window vanish.
const SHORT_ARC_NOTE = remark(wireManual, "also the trade reference notes and an older data card");
const SPRAY_NOTE = remark(dataCard, "gas and distance: apprenticeship study notes");

const shortArc = (diameterIn: number, wireFeedIpm: Span, volts: Span, amps: Span): WindowRow => ({
  classes: S6,
  diametersIn: [diameterIn],
  transfer: "short-circuit",
  wireFeedIpm,
  volts,
  amps,
  ctwdIn: [0.375, 0.5],
  gasFlowCfh: [20, 35],
  source: SHORT_ARC_NOTE,
});
const spray = (diameterIn: number, volts: Span, amps: Span): WindowRow => ({
  classes: S6,
  diametersIn: [diameterIn],
  transfer: "spray",
  volts,
  amps,
  ctwdIn: [0.5, 1],
  gasFlowCfh: [35, 45],
  source: SPRAY_NOTE,
});

const solidWire: readonly WindowRow[] = [
  // Feed from the thinnest to the thickest plate the manual lists: 22 gauge to 3/16 in (.030), to 1/4 in (.035).
  shortArc(0.03, [95, 400], [15, 21], [40, 145]),
  shortArc(0.035, [88, 375], [15, 22], [50, 190]),
  {
    ...shortArc(0.045, [70, 245], [17, 22], [75, 225]),
    source: remark(SHORT_ARC_NOTE, "the feed that gives those amps by burn-off", "derived"),
  },
  {
    classes: S6,
    diametersIn: [0.045],
    transfer: "short-circuit",
    wireFeedIpm: [150, 240],
    source: remark(tradeNotes, "for 1/8 to 1/4 in plate"),
  },
  {
    // Documents overlap but differ on flow; both stand.
    classes: S6,
    diametersIn: [],
    transfer: "short-circuit",
    gasFlowCfh: [25, 45],
    source: apprenticeship,
  },
  spray(0.03, [24, 28], [150, 265]),
  spray(0.035, [24, 28], [175, 290]),
  spray(0.045, [24, 30], [200, 320]),
  {
    classes: S6,
    diametersIn: [0.035],
    transfer: "spray",
    wireFeedIpm: [350, 600],
    source: fromMemory,
  },
  {
    classes: S6,
    diametersIn: [0.045],
    transfer: "spray",
    wireFeedIpm: [350, 450],
    source: tradeNotes,
  },
  {
    classes: S6,
    diametersIn: [],
    travelAngleDeg: [5, 15],
    source: remark(tradeNotes, "push; drag narrows the bead"),
  },
];

const ER_STAINLESS = ["ER308L", "ER309L", "ER316L"];
const stainlessSolid = (
  diameterIn: number,
  transfer: Transfer,
  wireFeedIpm: Span,
  volts: Span,
  amps: Span,
): WindowRow => ({
  classes: ER_STAINLESS,
  diametersIn: [diameterIn],
  transfer,
  // No burn-off of stainless solid wire is known to us: it draws less than carbon steel at the same feed.
  ampsUnpaired: true,
  wireFeedIpm,
  volts,
  amps,
  ctwdIn: transfer === "spray" ? [0.5, 0.75] : [0.375, 0.625],
  source: remark(
    fromMemory,
    "usual figures of data sheets; short arc in helium tri-mix, spray in argon with 2 % oxygen",
  ),
});
const stainlessSolidWire: readonly WindowRow[] = [
  stainlessSolid(0.035, "short-circuit", [120, 400], [18, 24], [55, 160]),
  stainlessSolid(0.045, "short-circuit", [100, 220], [18, 22], [95, 170]),
  stainlessSolid(0.035, "spray", [400, 475], [23, 26], [165, 210]),
  stainlessSolid(0.045, "spray", [240, 420], [24, 28], [195, 275]),
  {
    classes: ER_STAINLESS,
    diametersIn: [],
    gasFlowCfh: [30, 45],
    travelAngleDeg: [5, 15],
    source: fromMemory,
  },
];

const CORE_RULE = remark(currentNotes, "about 1 A per 0.001 in of core; outer range from memory", "memory");
const ROD_TABLES = remark(fromMemory, "usual amperage tables for covered electrodes");
/** Amps by core diameter, inches. */
const rodAmps = (
  id: string,
  bySize: readonly (readonly [diameterIn: number, amps: Span])[],
): readonly WindowRow[] =>
  bySize.map(([diameterIn, amps]) => ({
    classes: [id],
    diametersIn: [diameterIn],
    amps,
    source: ROD_TABLES,
  }));

const coveredRods: readonly WindowRow[] = [
  { classes: ["E6010"], diametersIn: [0.125], amps: [75, 125], source: currentNotes },
  ...rodAmps("E6010", [
    [3 / 32, [40, 80]],
    [5 / 32, [110, 170]],
    [3 / 16, [140, 215]],
  ]),
  {
    classes: ["E6011"],
    diametersIn: [0.125],
    amps: [75, 125],
    source: remark(fromMemory, "90 A stands in the current notes"),
  },
  ...rodAmps("E6011", [
    [3 / 32, [40, 85]],
    [5 / 32, [110, 170]],
    [3 / 16, [140, 215]],
  ]),
  ...rodAmps("E6013", [
    [3 / 32, [50, 90]],
    [1 / 8, [80, 130]],
    [5 / 32, [105, 180]],
    [3 / 16, [150, 230]],
  ]),
  ...rodAmps("E7014", [
    [3 / 32, [80, 125]],
    [1 / 8, [110, 160]],
    [5 / 32, [150, 210]],
    [3 / 16, [200, 275]],
  ]),
  { classes: ["E7018"], diametersIn: [0.125], amps: [90, 160], source: CORE_RULE },
  ...rodAmps("E7018", [
    [3 / 32, [70, 110]],
    [5 / 32, [130, 220]],
    [3 / 16, [200, 300]],
  ]),
  {
    classes: ["E7018"],
    diametersIn: [0.125],
    positions: ["vertical-up"],
    amps: [100, 125],
    source: currentNotes,
  },
  { classes: ["E7024"], diametersIn: [0.125], amps: [115, 175], source: fromMemory },
  ...rodAmps("E7024", [
    [3 / 32, [90, 140]],
    [5 / 32, [180, 240]],
    [3 / 16, [230, 315]],
  ]),
  ...(["E308L-16", "E308L-17", "E309L-16", "E309L-17", "E316L-16"] as const).flatMap((id) =>
    rodAmps(id, [
      [3 / 32, [40, 80]],
      [1 / 8, [75, 115]],
      [5 / 32, [95, 150]],
      [3 / 16, [130, 200]],
    ]),
  ),
  { classes: COVERED, diametersIn: [], travelAngleDeg: [5, 30], source: fromMemory },
];

const rods: readonly WindowRow[] = [
  { classes: RODS, diametersIn: [], gases: ["Ar"], gasFlowCfh: [15, 25], source: tungstenHandbook },
];

/**
 * Rods and wires may share a classification (ER70S-6), so each group holds for one process family only.
 * Starting windows, never limits: the wire's own data sheet and the governing procedure govern.
 */
export const windowRows: {
  readonly wire: readonly WindowRow[];
  readonly covered: readonly WindowRow[];
  readonly rod: readonly WindowRow[];
} = {
  wire: [...selfShieldedCarbon, ...gasShieldedCarbon, ...stainlessCored, ...solidWire, ...stainlessSolidWire],
  covered: coveredRods,
  rod: rods,
};
