import { z } from "zod";
import { ShopCriteriaSchema, shopSetId, type ShopCriteria } from "@/lib/accept";
import { canonicalJson, fail, issue, ok, type Result } from "@/lib/base";
import { draftSaysMore, jobSaysMore, textHasStudy, textSaysMore } from "@/lib/inspect";
import { PublicKeySchema } from "@/lib/signature";
import {
  ExchangeBeadSchema,
  hasCount,
  hasPlan,
  hasSection,
  hasStudy,
  Sha256Schema,
  type ExchangeBead,
  type ExchangePhoto,
} from "./bead-file";
import type { ExchangeIssue } from "./issue";
import { ExchangeInstrumentSchema, ExchangeJobSchema, jobIssues, noJobs, type JobsAlong } from "./job-file";
import { beadIssues, readVersioned, repeated } from "./read-versioned";
import {
  ExchangeCardSchema,
  ExchangeTrialSchema,
  noSeries,
  seriesIssues,
  type SeriesAlong,
} from "./series-file";

/** Bump when the archive's shape changes; a reader refuses what is newer than itself. */
export const ARCHIVE_VERSION = 9;
/** Readings keep nothing of a study of their gauge. */
const WITHOUT_STUDIES = 8;
/** Jobs of this version say the extent of a weld as a free text; they are read into the present shape. */
const EXTENT_IN_WORDS = 3;
const WITHOUT_SECTIONS = 4;
const WITHOUT_KEYS = 5;
/** Marks hold no number by eye; jobs and inspections say neither customer, size asked, report number, certificate nor sample. */
const SAYING_LESS = 6;
/** Neither trials nor cards, and no bead that is still to be run as it was planned. */
const WITHOUT_SERIES = 7;
/** An archive names the oldest version that holds what is in it, so that older readers take it where they can. */
const WITHOUT_JOBS = 2;
const WITHOUT_CRITERIA = 1;

export const ArchiveManifestSchema = z.object({
  schemaVersion: z.literal([
    WITHOUT_CRITERIA,
    WITHOUT_JOBS,
    EXTENT_IN_WORDS,
    WITHOUT_SECTIONS,
    WITHOUT_KEYS,
    SAYING_LESS,
    WITHOUT_SERIES,
    WITHOUT_STUDIES,
    ARCHIVE_VERSION,
  ]),
  beads: z.array(ExchangeBeadSchema).max(2000).readonly(),
  /** Every photo of every bead once, sorted by name. */
  photos: z
    .array(
      z.object({
        name: z.string().max(80),
        sha256: Sha256Schema,
        bytes: z
          .int()
          .nonnegative()
          .max(2 ** 31),
      }),
    )
    .max(10_000)
    .readonly(),
  /** The versions of the shop's own limits that the beads name, sorted; no key where there are none. */
  criteria: z.array(ShopCriteriaSchema).max(1000).readonly().optional(),
  /** Jobs, and the instruments their inspections name, sorted; no key where no job travels. */
  jobs: z.array(ExchangeJobSchema).max(500).readonly().optional(),
  instruments: z.array(ExchangeInstrumentSchema).max(1000).readonly().optional(),
  /** Public keys by which the signed records are signed, and those their holders had before or since; sorted by id. */
  keys: z.array(PublicKeySchema).max(1000).readonly().optional(),
  /** Trials that beads belong to and cards they were run by, sorted by number; no key where there are none. */
  trials: z.array(ExchangeTrialSchema).max(1000).readonly().optional(),
  cards: z.array(ExchangeCardSchema).max(1000).readonly().optional(),
  /** SHA-256 of the knowledge tables the beads were judged with, so that an old verdict can be traced. */
  tablesDigest: Sha256Schema,
});
export type ArchiveManifest = z.infer<typeof ArchiveManifestSchema>;

/** Where a photo lies in an archive. */
export function archivePhotoName({ sha256, format }: Pick<ExchangePhoto, "sha256" | "format">): string {
  return `photos/${sha256}.${format}`;
}

/** The versions of the shop's own limits that these beads and jobs name, sorted by id. */
function criteriaNamed(
  beads: readonly ExchangeBead[],
  { jobs }: JobsAlong,
  shopSets: readonly ShopCriteria[],
): readonly ShopCriteria[] {
  const named = new Set([
    ...beads.map(({ content }) => content.judgement.criteriaId),
    ...jobs.map(({ content }) => content.criteriaId),
  ]);
  return shopSets
    .filter((set) => named.has(shopSetId(set)))
    .toSorted((a, b) => (shopSetId(a) < shopSetId(b) ? -1 : 1));
}

/** Whether a job, one of its inspections or a signed text of it holds what an older reader would drop without a word. */
const saysMore = ({ content, inspections }: JobsAlong["jobs"][number]): boolean =>
  jobSaysMore(content) ||
  inspections.some(
    ({ draft, signed }) => draftSaysMore(draft) || signed.some((one) => textSaysMore(one.content)),
  );

const signedWithStudy = ({ inspections }: JobsAlong["jobs"][number]): boolean =>
  inspections.some(({ signed }) => signed.some(({ content }) => textHasStudy(content)));

function oldestFor(
  beads: readonly ExchangeBead[],
  criteria: readonly ShopCriteria[],
  { jobs, keys }: JobsAlong,
  { trials, cards }: SeriesAlong,
): ArchiveManifest["schemaVersion"] {
  if (beads.some(hasStudy) || jobs.some(signedWithStudy)) return ARCHIVE_VERSION;
  if (trials.length > 0 || cards.length > 0 || beads.some(hasPlan)) return WITHOUT_STUDIES;
  if (beads.some(hasCount) || jobs.some(saysMore)) return WITHOUT_SERIES;
  if (keys.length > 0) return SAYING_LESS;
  if (beads.some(hasSection)) return WITHOUT_KEYS;
  if (jobs.length > 0) return WITHOUT_SECTIONS;
  return criteria.length > 0 ? WITHOUT_JOBS : WITHOUT_CRITERIA;
}

/**
 * The manifest of these beads, in the order given. The photo list follows from them, and so does which of the shop's
 * limits travel along.
 */
export function archiveManifest(
  beads: readonly ExchangeBead[],
  tablesDigest: string,
  shopSets: readonly ShopCriteria[] = [],
  along: JobsAlong = noJobs,
  series: SeriesAlong = noSeries,
): ArchiveManifest {
  const criteria = criteriaNamed(beads, along, shopSets);
  const carried = [
    ...beads.flatMap((bead) => bead.photos),
    ...along.jobs.flatMap(({ evidence }) => evidence),
  ];
  const photos = carried.map((photo) => ({
    name: archivePhotoName(photo),
    sha256: photo.sha256,
    bytes: photo.bytes,
  }));
  const byName = new Map(photos.map((photo) => [photo.name, photo]));
  return {
    schemaVersion: oldestFor(beads, criteria, along, series),
    ...(criteria.length > 0 ? { criteria } : {}),
    ...(along.jobs.length > 0 ? { jobs: along.jobs, instruments: along.instruments } : {}),
    ...(along.keys.length > 0 ? { keys: along.keys } : {}),
    ...(series.trials.length > 0 ? { trials: series.trials } : {}),
    ...(series.cards.length > 0 ? { cards: series.cards } : {}),
    beads,
    photos: [...byName.values()].sort((a, b) => (a.name < b.name ? -1 : 1)),
    tablesDigest,
  };
}

/** The manifest as text: the same content always gives the same text. Throws on one that does not fit its schema. */
export function serialiseManifest(manifest: ArchiveManifest): string {
  return canonicalJson(ArchiveManifestSchema.parse(manifest));
}

/** Issues: `not-json`, `version-missing`, `version-newer`, `malformed`, `id-twice`, `photo-unlisted`. */
export function parseManifest(text: string): Result<ArchiveManifest, ExchangeIssue> {
  const read = readVersioned(text, ArchiveManifestSchema, ARCHIVE_VERSION);
  if (!read.ok) return read;
  const { beads, tablesDigest, photos, criteria = [], jobs = [], instruments = [], keys = [] } = read.value;
  const { trials = [], cards = [] } = read.value;
  const wrong = [
    ...repeated(beads, ["beads"]),
    ...repeated(
      criteria.map((set) => ({ id: shopSetId(set) })),
      ["criteria"],
    ),
    ...beads.flatMap((bead, i) => beadIssues(bead, ["beads", i])),
    ...jobIssues({ jobs, instruments, keys }, beads),
    ...seriesIssues({ trials, cards }, beads),
  ];
  if (wrong.length > 0) return fail<ExchangeIssue>(...wrong);
  // The lists say nothing the beads do not say; where they differ, one of them was changed.
  const again = archiveManifest(beads, tablesDigest, criteria, { jobs, instruments, keys });
  if (canonicalJson(again.photos) !== canonicalJson(photos))
    return fail(issue("malformed", ["photos"], { problem: "photo-list-differs" }));
  return canonicalJson(again.criteria ?? []) === canonicalJson(criteria)
    ? ok(read.value)
    : fail(issue("malformed", ["criteria"], { problem: "criteria-list-differs" }));
}
