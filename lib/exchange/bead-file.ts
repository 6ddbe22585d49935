import { z } from "zod";
import { BeadContentSchema, photoRoles } from "@/lib/assess";

/** Bump when the published shape changes; a reader refuses what is newer than itself. */
export const BEAD_FILE_VERSION = 2;
/** A reader of this version knows no sections and would leave them out without a word. */
export const WITHOUT_SECTIONS = 1;
export const beadFileVersions = [WITHOUT_SECTIONS, BEAD_FILE_VERSION] as const;

/** SHA-256 as 64 lower-case hexadecimal digits. */
export const Sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);
const time = z.iso.datetime();
const id = z.string().min(1).max(60);

/** What is fixed about a photo. Pixels are those of the upright original, the frame of its drawing. */
export const ExchangePhotoSchema = z.object({
  id: z.string().min(1).max(40),
  sha256: Sha256Schema,
  widthPx: z.int().positive(),
  heightPx: z.int().positive(),
  role: z.enum(photoRoles),
  /** Short name of the file format, e.g. "jpeg": becomes the ending of the file's name. */
  format: z.string().regex(/^[a-z0-9]{1,8}$/),
  bytes: z.int().nonnegative(),
});
export type ExchangePhoto = z.infer<typeof ExchangePhotoSchema>;

/** One bead as it leaves and comes back; a `BeadRecord` fits it. */
export const ExchangeBeadSchema = z.object({
  id,
  number: z.int().positive(),
  revision: z.int().positive(),
  createdAt: time,
  updatedAt: time,
  /** The bead this one was run after; null for a first try. */
  previous: z
    .object({ id, number: z.int().positive(), title: z.string().max(120) })
    .nullable()
    .default(null),
  content: BeadContentSchema,
  photos: z.array(ExchangePhotoSchema).max(60).readonly(),
});
export type ExchangeBead = z.infer<typeof ExchangeBeadSchema>;

/** Whether a bead carries what version 1 cannot hold. */
export const hasSection = ({ content }: Pick<ExchangeBead, "content">): boolean =>
  Boolean(content.judgement.sectionSetId) || content.photos.some(({ section }) => section !== undefined);

/** The oldest version that holds these beads whole. */
export const beadFileVersion = (beads: readonly Pick<ExchangeBead, "content">[]) =>
  beads.some(hasSection) ? BEAD_FILE_VERSION : WITHOUT_SECTIONS;
