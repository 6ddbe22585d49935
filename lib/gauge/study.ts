import { z } from "zod";

/** So many people, parts and tries at most: a sheet that one person still fills. */
export const studyLimits = { people: [2, 6], parts: [2, 30], tries: [2, 5] } as const;

/**
 * So many at least, and the study speaks for readings: two people, five parts, two tries (own estimate). A smaller one is
 * worked out, but says too little of the gauge.
 */
const speaksFrom = { people: 2, parts: 5, tries: 2 } as const;

const Label = z.string().trim().min(1).max(20);
const Value = z.number().min(-1000).max(20_000);

/** Several people read the same parts several times with one gauge, each not knowing what was read before. */
export const GaugeStudySchema = z
  .object({
    schemaVersion: z.literal(1).default(1),
    /** The day it was made: readings taken before have nothing from it. */
    on: z.iso.date(),
    /** What was read: "leg of a fillet". */
    what: z.string().trim().min(1).max(80),
    unit: z.enum(["mm", "deg"]),
    /** Marks or letters, never names. */
    people: z.array(Label).min(studyLimits.people[0]).max(studyLimits.people[1]),
    parts: z.array(Label).min(studyLimits.parts[0]).max(studyLimits.parts[1]),
    /** Width of what is allowed, upper less lower, in `unit`; null: not asked. */
    tolerance: z.number().positive().max(20_000).nullable().default(null),
    /** By person, part and try, in `unit`: none missing. */
    values: z.array(z.array(z.array(Value).min(studyLimits.tries[0]).max(studyLimits.tries[1]))),
  })
  .refine(({ people, parts, values }) => isWhole(values, people.length, parts.length), { path: ["values"] })
  .refine(({ people }) => new Set(people).size === people.length, { path: ["people"] })
  .refine(({ parts }) => new Set(parts).size === parts.length, { path: ["parts"] });
export type GaugeStudy = z.infer<typeof GaugeStudySchema>;

/** By person, part and try. */
export type StudyValues = readonly (readonly (readonly number[])[])[];

function isWhole(values: StudyValues, people: number, parts: number): boolean {
  const tries = values[0]?.[0]?.length ?? 0;
  return (
    values.length === people &&
    values.every((own) => own.length === parts && own.every((one) => one.length === tries))
  );
}

/** Whether a study is large enough to say how uncertain a reading with its gauge is. */
export const speaksForReadings = ({ people, parts, values }: GaugeStudy): boolean =>
  people.length >= speaksFrom.people &&
  parts.length >= speaksFrom.parts &&
  (values[0]?.[0]?.length ?? 0) >= speaksFrom.tries;
