import { z } from "zod";

export const instrumentKinds = [
  "fillet-gauge",
  "throat-gauge",
  "undercut-gauge",
  "cap-gauge",
  "misalignment-gauge",
  "feeler-gauge",
  "calliper",
  "rule",
  "protractor",
  "magnifier",
  "light-meter",
  "borescope",
  "camera",
] as const;
export type InstrumentKind = (typeof instrumentKinds)[number];

export const instrumentNames: Readonly<Record<InstrumentKind, string>> = {
  "fillet-gauge": "fillet gauge",
  "throat-gauge": "throat gauge",
  "undercut-gauge": "undercut gauge",
  "cap-gauge": "cap height gauge",
  "misalignment-gauge": "misalignment gauge",
  "feeler-gauge": "feeler gauge",
  calliper: "calliper",
  rule: "rule or tape",
  protractor: "protractor",
  magnifier: "magnifier",
  "light-meter": "light meter",
  borescope: "borescope or mirror",
  camera: "camera",
};

/** What is only looked through shows no size, so it carries no calibration. */
const uncalibrated: ReadonlySet<InstrumentKind> = new Set(["magnifier", "borescope", "camera"]);

/** What is only looked through, or reads light, gives no size. */
const withoutSize: ReadonlySet<InstrumentKind> = new Set([...uncalibrated, "light-meter"]);

/** Whether it gives sizes, so that a study can say how uncertain they are. */
export const canBeStudied = (kind: InstrumentKind): boolean => !withoutSize.has(kind);

/** A calendar day, "2026-11-25". */
export const DaySchema = z.iso.date();

export const InstrumentSchema = z.object({
  schemaVersion: z.literal(1).default(1),
  kind: z.enum(instrumentKinds),
  name: z.string().trim().min(1).max(80),
  serial: z.string().trim().max(60).default(""),
  /** Smallest step it reads: mm, degrees or lux, as its kind has it. */
  resolution: z.number().positive().max(1000).nullable().default(null),
  calibratedOn: DaySchema.nullable().default(null),
  dueOn: DaySchema.nullable().default(null),
});
export type Instrument = z.infer<typeof InstrumentSchema>;

export type Calibration = "valid" | "overdue" | "not-yet" | "not-recorded" | "needs-none";

/** What a reading says it was taken with: "Fillet gauge FG-2, no. 118". At most 80 characters, as a reading holds. */
export const instrumentLabel = ({ name, serial }: Instrument): string =>
  serial === "" ? name : `${name.slice(0, 80 - ", no. ".length - serial.length)}, no. ${serial}`;

/** Why an instrument should be looked at before it is used on a day; null: nothing to say. */
export function calibrationDoubt(instrument: Instrument, day: string): string | null {
  const standing = calibrationOn(instrument, day);
  if (standing === "overdue") return `calibration was due ${instrument.dueOn}`;
  if (standing === "not-yet") return `calibrated only on ${instrument.calibratedOn}`;
  if (standing === "not-recorded") return "no calibration date";
  return null;
}

/** Whether its days can be true: nothing is due before it was done. */
export const daysInOrder = ({ calibratedOn, dueOn }: Pick<Instrument, "calibratedOn" | "dueOn">): boolean =>
  calibratedOn === null || dueOn === null || calibratedOn <= dueOn;

/** How an instrument stood on a day. The due day itself is still within. Days compare as texts. */
export function calibrationOn(instrument: Instrument, day: string): Calibration {
  if (instrument.dueOn === null) return uncalibrated.has(instrument.kind) ? "needs-none" : "not-recorded";
  if (instrument.dueOn < day) return "overdue";
  if (instrument.calibratedOn !== null && instrument.calibratedOn > day) return "not-yet";
  return "valid";
}
