/**
 * Fields that came after the first records were signed, by where they stand. They are left out where nothing is
 * recorded, never null: so rows, seals, archives and signed texts of before keep every byte.
 */
const laterFields = {
  job: ["customer"],
  weld: ["legMm", "throatMm", "criteriaId"],
  draft: ["reportNumber", "qualification", "sample"],
} as const;

type Row = Readonly<Record<string, unknown>>;
const isRow = (value: unknown): value is Row =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isNothing = (value: unknown): boolean =>
  value === undefined || value === null || (typeof value === "string" && value.trim() === "");

function withoutEmpty(row: unknown, keys: readonly string[]): unknown {
  if (!isRow(row) || !keys.some((key) => key in row && isNothing(row[key]))) return row;
  return Object.fromEntries(
    Object.entries(row).filter(([key, value]) => !keys.includes(key) || !isNothing(value)),
  );
}

/** A job's content as it came, its later fields left out where they are empty. */
export function tidyJob(input: unknown): unknown {
  const job = withoutEmpty(input, laterFields.job);
  if (!isRow(job) || !Array.isArray(job["welds"])) return job;
  return { ...job, welds: job["welds"].map((weld: unknown) => withoutEmpty(weld, laterFields.weld)) };
}

/** A draft as it came; a qualification of which nothing is said is none. */
export function tidyDraft(input: unknown): unknown {
  if (!isRow(input)) return input;
  const said = input["qualification"];
  const isUnsaid = isRow(said) && Object.values(said).every(isNothing);
  return withoutEmpty(isUnsaid ? { ...input, qualification: null } : input, laterFields.draft);
}

const has = (row: Row, keys: readonly string[]): boolean => keys.some((key) => row[key] !== undefined);

/** Whether a job says anything that a reader of before would drop without a word. */
export const jobSaysMore = (job: { readonly welds: readonly object[] }): boolean =>
  has({ ...job }, laterFields.job) || job.welds.some((weld) => has({ ...weld }, laterFields.weld));

/** The same of an inspection's draft. */
export const draftSaysMore = (draft: object): boolean => has({ ...draft }, laterFields.draft);

/** The same of a signed text; one that no longer reads says nothing. */
export function textSaysMore(text: string): boolean {
  try {
    const { job, draft } = JSON.parse(text) as { job: { content: { welds: object[] } }; draft: object };
    return jobSaysMore(job.content) || draftSaysMore(draft);
  } catch {
    return false;
  }
}

/** Whether a reading in a signed text keeps what a study of its gauge said; a text that no longer reads says nothing. */
export function textHasStudy(text: string): boolean {
  type Read = { readonly study?: unknown };
  type Seen = { judgement: { readings: Read[] }; photos: { drawing: { marks: { gauge: Read[] }[] } }[] };
  try {
    const { beads } = JSON.parse(text) as { beads: Seen[] };
    return beads
      .flatMap(({ judgement, photos }) => [
        ...judgement.readings,
        ...photos.flatMap(({ drawing }) => drawing.marks.flatMap(({ gauge }) => gauge)),
      ])
      .some(({ study }) => study !== undefined);
  } catch {
    return false;
  }
}
