import { z } from "zod";
import { BeadContentSchema, photoRoles } from "@/lib/assess";

/** Bump when the published shape changes; a reader refuses what is newer than itself. */
const BEAD_FILE_VERSION = 5;
/** A reader of this version knows no studies of gauges at readings and would leave them out without a word. */
const WITHOUT_STUDIES = 4;
/** The same of a plan beside a set-up. */
const WITHOUT_PLANS = 3;
/** The same of counts by eye. */
const WITHOUT_COUNTS = 2;
/** The same of sections. */
export const WITHOUT_SECTIONS = 1;
export const beadFileVersions = [
  WITHOUT_SECTIONS,
  WITHOUT_COUNTS,
  WITHOUT_PLANS,
  WITHOUT_STUDIES,
  BEAD_FILE_VERSION,
] as const;

/** SHA-256 as 64 lower-case hexadecimal digits. */
export const Sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);
const time = z.iso.datetime();
/**
 * An id goes into addresses, file names and tables of names, so it is letters, digits and dashes, and no word that every
 * object knows. One that is otherwise was made by no export of ours.
 */
export const SafeIdSchema = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,59}$/)
  .refine((id) => !(id in {}));
const id = SafeIdSchema;
/** Running numbers and revisions: room to count on for ever within the 32 bits of the database. */
export const CountedSchema = z.int().positive().max(1_000_000_000);
const bytes = z
  .int()
  .nonnegative()
  .max(2 ** 31);

/** What is fixed about a photo. Pixels are those of the upright original, the frame of its drawing. */
export const ExchangePhotoSchema = z.object({
  id,
  sha256: Sha256Schema,
  widthPx: z.int().positive().max(100_000),
  heightPx: z.int().positive().max(100_000),
  role: z.enum(photoRoles),
  /** Short name of the file format, e.g. "jpeg": becomes the ending of the file's name. */
  format: z.string().regex(/^[a-z0-9]{1,8}$/),
  bytes,
});
export type ExchangePhoto = z.infer<typeof ExchangePhotoSchema>;

/** One bead as it leaves and comes back; a `BeadRecord` fits it. */
export const ExchangeBeadSchema = z.object({
  id,
  number: CountedSchema,
  revision: CountedSchema,
  createdAt: time,
  updatedAt: time,
  /** The bead this one was run after; null for a first try. */
  previous: z
    .object({ id, number: CountedSchema, title: z.string().max(120) })
    .nullable()
    .default(null),
  content: BeadContentSchema,
  photos: z.array(ExchangePhotoSchema).max(60).readonly(),
});
export type ExchangeBead = z.infer<typeof ExchangeBeadSchema>;

/** Whether a bead carries what version 1 cannot hold. */
export const hasSection = ({ content }: Pick<ExchangeBead, "content">): boolean =>
  Boolean(content.judgement.sectionSetId) || content.photos.some(({ section }) => section !== undefined);

/** Whether somebody said of a mark about how many it holds. */
export const hasCount = ({ content }: Pick<ExchangeBead, "content">): boolean =>
  content.photos.some(({ drawing }) => drawing.marks.some(({ aboutCount }) => aboutCount !== undefined));

/** Whether a reading keeps what a study of its gauge said. */
export const hasStudy = ({ content }: Pick<ExchangeBead, "content">): boolean =>
  content.judgement.readings.some(({ study }) => study !== undefined) ||
  content.photos.some(({ drawing }) =>
    drawing.marks.some(({ gauge }) => gauge.some(({ study }) => study !== undefined)),
  );

/** Whether a bead says what it was to be run with. */
export const hasPlan = ({ content }: Pick<ExchangeBead, "content">): boolean =>
  Boolean(content.judgement.planned);

/** The oldest version that holds these beads whole. */
export function beadFileVersion(
  beads: readonly Pick<ExchangeBead, "content">[],
): (typeof beadFileVersions)[number] {
  if (beads.some(hasStudy)) return BEAD_FILE_VERSION;
  if (beads.some(hasPlan)) return WITHOUT_STUDIES;
  if (beads.some(hasCount)) return WITHOUT_PLANS;
  return beads.some(hasSection) ? WITHOUT_COUNTS : WITHOUT_SECTIONS;
}
