import type { Bounds, QuantityKindName } from "./quantity-kinds";
import * as words from "./words";

/** The four parts of the form, in the order in which a welder sets up. */
export const setupParts = ["electrode", "machine", "travel", "joint"] as const;
export type SetupPart = (typeof setupParts)[number];

interface Common {
  readonly label: string;
  readonly hint?: string;
  /** Part of the form, line in it, and place in the line; fields of one line stand beside each other. */
  readonly form: readonly [part: SetupPart, line: number, place: number];
  /** Column of the bead table, with the unit of the stored number. Tables stay: a reworded label renames no column. */
  readonly csv: string;
  /** Its name in a list's address, where a list can be narrowed by it. */
  readonly filter?: string;
  /** Whether trends can be grouped by it, under its filter's name. */
  readonly groups?: true;
}
interface ChoiceRow extends Common {
  /** "keys": a short list, all in sight; "list": a long one. */
  readonly control: "keys" | "list";
  readonly words: Readonly<Record<string, string>>;
  /** Cells of the bead table hold the words of the answer; without it, the answer's id. */
  readonly csvWords?: true;
}
interface ClassRow extends Common {
  readonly control: "class";
}
interface NumberRow extends Common {
  readonly control: "number";
  readonly quantity: QuantityKindName;
  readonly bounds: Bounds;
}
/** Words as they stand on a machine: kept as typed, compared with nothing. */
interface TextRow extends Common {
  readonly control: "text";
}
/** One field of a set-up: what it is called and how it is asked for, written, kept in tables and looked for. */
export type SetupFieldRow = ChoiceRow | ClassRow | NumberRow | TextRow;

/** Upper bounds are absurdity bounds (no welding machine reaches them), not process windows. */
function number(quantity: QuantityKindName, max: number, from?: number) {
  const bounds: Bounds = from === undefined ? { max } : { from, max };
  return { control: "number", quantity, bounds } as const;
}

const dial = { control: "text" } as const;

/**
 * Every field of a set-up, once, in the order of sheets, tables and filters. The stored shape (run-setup-schema.ts), the
 * form, the sheet, the bead table, filters, groups and the check read label, unit, bounds and words here.
 */
export const setupFields = {
  process: {
    label: "Process",
    form: ["electrode", 1, 1],
    control: "keys",
    words: words.processWords,
    csv: "Process",
    filter: "process",
    groups: true,
  },
  transfer: {
    label: "Metal transfer",
    form: ["electrode", 3, 1],
    control: "keys",
    words: words.transferWords,
    csv: "Transfer",
    filter: "transfer",
    groups: true,
  },
  /** AWS classification such as "E71T-11" or "E308LT0-3"; free text is kept, only known ones are checked. */
  electrodeClass: {
    label: "Electrode class",
    form: ["electrode", 2, 1],
    control: "class",
    csv: "Electrode class",
    filter: "class",
    groups: true,
  },
  electrodeDiameterMm: {
    label: "Diameter",
    form: ["electrode", 2, 2],
    ...number("wire-diameter", 10),
    csv: "Electrode diameter (mm)",
  },
  polarity: {
    label: "Polarity",
    hint: "Read it at the lugs, power off and unplugged, not off the panel.",
    form: ["machine", 1, 1],
    control: "keys",
    words: words.polarityWords,
    csv: "Polarity",
    filter: "polarity",
    groups: true,
  },
  gas: {
    label: "Shielding gas",
    form: ["electrode", 4, 1],
    control: "list",
    words: words.gasWords,
    csv: "Gas",
    filter: "gas",
    groups: true,
  },
  gasFlowLPerMin: {
    label: "Gas flow",
    hint: "Read with the purge on, or the drive roll released: no live wire.",
    form: ["electrode", 4, 2],
    ...number("flow", 100, 0),
    csv: "Gas flow (L/min)",
  },
  wireFeedMPerMin: {
    label: "Wire feed",
    form: ["machine", 2, 1],
    ...number("wire-feed", 40),
    csv: "Wire feed (m/min)",
  },
  volts: { label: "Voltage", form: ["machine", 2, 2], ...number("volts", 100), csv: "Volts (V)" },
  amps: { label: "Current", form: ["machine", 2, 3], ...number("amps", 1500), csv: "Amps (A)" },
  ctwdMm: {
    label: "Tip to work",
    hint: "Contact tip to plate, gun held as when welding.",
    form: ["travel", 2, 1],
    ...number("tip-distance", 150),
    csv: "Tip to work (mm)",
  },
  travelDirection: {
    label: "Travel direction",
    form: ["travel", 1, 1],
    control: "keys",
    words: words.travelDirectionWords,
    csv: "Travel direction",
  },
  /** Of the gun off perpendicular in the direction of travel, 0 = square. */
  travelAngleDeg: {
    label: "Travel angle",
    hint: "Off square, along the weld.",
    form: ["travel", 2, 2],
    ...number("angle", 90, 0),
    csv: "Travel angle (deg)",
  },
  /** Of the gun from the first plate, seen along the weld; 45 bisects a T-joint, 90 is square on a flat plate. */
  workAngleDeg: {
    label: "Work angle",
    hint: "From the first plate; 45 splits a T-joint.",
    form: ["travel", 2, 3],
    ...number("angle", 180, 0),
    csv: "Work angle (deg)",
  },
  travelSpeedMmPerMin: {
    label: "Travel speed",
    form: ["travel", 3, 1],
    ...number("travel-speed", 5000),
    csv: "Travel speed (mm/min)",
  },
  weldLengthMm: {
    label: "Weld length",
    form: ["travel", 3, 2],
    ...number("stated-length", 20_000),
    csv: "Length as recorded (mm)",
  },
  arcTimeS: {
    label: "Arc time",
    hint: "Such as 93, 1:33 or 1 min 33 s.",
    form: ["travel", 3, 3],
    ...number("duration", 36_000),
    csv: "Arc time (s)",
  },
  joint: {
    label: "Joint",
    form: ["joint", 1, 1],
    control: "list",
    words: words.jointWords,
    csv: "Joint",
    csvWords: true,
    filter: "joint",
    groups: true,
  },
  position: {
    label: "Position",
    form: ["joint", 2, 1],
    control: "keys",
    words: words.positionWords,
    csv: "Position",
    csvWords: true,
    filter: "position",
    groups: true,
  },
  progression: {
    label: "Vertical, which way",
    form: ["joint", 3, 1],
    control: "keys",
    words: words.progressionWords,
    csv: "Progression",
    csvWords: true,
    filter: "progression",
    groups: true,
  },
  baseMetal: {
    label: "Base metal",
    form: ["joint", 4, 1],
    control: "keys",
    words: words.baseMetalWords,
    csv: "Base metal",
    filter: "metal",
    groups: true,
  },
  thicknessMm: {
    label: "Thickness",
    hint: "The thinner part. Gauge works too: 16 ga.",
    form: ["joint", 5, 1],
    ...number("thickness", 500),
    csv: "Thickness (mm)",
  },
  fitUpGapMm: {
    label: "Gap at fit-up",
    form: ["joint", 5, 2],
    ...number("measured-length", 50, 0),
    csv: "Fit-up gap (mm)",
  },
  surface: {
    label: "Surface before welding",
    form: ["joint", 6, 1],
    control: "keys",
    words: words.surfaceWords,
    csv: "Surface",
    filter: "surface",
  },
  inputPower: {
    label: "Mains input",
    form: ["machine", 3, 1],
    control: "keys",
    words: words.inputPowerWords,
    csv: "Input power",
    filter: "power",
    groups: true,
  },
  outdoors: {
    label: "Where",
    form: ["joint", 7, 1],
    control: "keys",
    words: words.outdoorsWords,
    csv: "Outdoors",
  },
  /** Layers in this joint so far, this one included. */
  passCount: {
    label: "Layer number",
    hint: "1 for the first run in this joint.",
    form: ["joint", 5, 4],
    ...number("count", 200, 1),
    csv: "Layer",
  },
  /** Null too when none was asked for. */
  targetLegMm: {
    label: "Leg asked for",
    hint: "Fillet leg on the drawing.",
    form: ["joint", 5, 3],
    ...number("stated-length", 100),
    csv: "Leg asked for (mm)",
  },
  /** Where a knob without a scale in volts stands: a reading of its own, never turned into volts. */
  dialVoltage: {
    label: "Voltage knob",
    hint: "As it stands on the machine, with its own mark: B, 4, half way to 5.",
    form: ["machine", 4, 1],
    ...dial,
    csv: "Voltage knob",
  },
  dialFeed: {
    label: "Wire feed knob",
    hint: "Likewise: 40, tick 6 of 10.",
    form: ["machine", 4, 2],
    ...dial,
    csv: "Wire feed knob",
  },
} as const satisfies Readonly<Record<string, SetupFieldRow>>;

type Fields = typeof setupFields;
export type SetupField = keyof Fields;
type FieldsWith<Part> = { [F in SetupField]: Fields[F] extends Part ? F : never }[SetupField];
/** Fields answered with a number. */
export type NumberField = FieldsWith<{ readonly control: "number" }>;
/** Fields answered out of a closed list. */
export type ChoiceField = FieldsWith<{ readonly words: object }>;
/** Fields answered in words of the machine's own. */
export type TextField = FieldsWith<{ readonly control: "text" }>;
/** Fields a list can be narrowed by, and the names they have in its address. */
export type FilterableField = FieldsWith<{ readonly filter: string }>;
export type SetupFilterName<F extends FilterableField = FilterableField> = Fields[F]["filter"];
