import { z } from "zod";
import { RunSetupSchema } from "@/lib/setup";
import { joints, positions } from "@/lib/trade";
import { RubricSchema, type RubricLine } from "./rubric";

/** Bump when the stored shape changes, and teach the parser the older one. */
export const EXERCISE_VERSION = 1;

/** What a group is asked to weld, beside its title, code and dates. */
export const ExerciseContentSchema = z.object({
  schemaVersion: z.literal(EXERCISE_VERSION).default(EXERCISE_VERSION),
  /** What the student is to reach, in the instructor's words. */
  aim: z.string().trim().max(2000).default(""),
  joint: z.enum(joints).nullable().default(null),
  position: z.enum(positions).nullable().default(null),
  electrodeClass: z.string().trim().min(1).max(40).nullable().default(null),
  /** Id of a criteria set in lib/accept; null: beads are not judged. */
  criteriaId: z.string().max(60).nullable().default(null),
  criteriaSettings: z
    .record(z.string().max(60), z.union([z.string().max(60), z.boolean(), z.number()]))
    .default({}),
  /** What the machine starts from. Joint, position and class stand above and win. */
  setup: RunSetupSchema.default(() => RunSetupSchema.parse({})),
  rubric: RubricSchema.default([]),
  /** The open page lists the group's names to whoever has the code. Otherwise everybody types their own. */
  namesShown: z.boolean().default(false),
});
export type ExerciseContent = z.infer<typeof ExerciseContentSchema>;

/** Lines most exercises begin with; invented for this project, every shop writes its own. */
export const usualRubric: readonly RubricLine[] = [
  { id: "profile", title: "Size and profile as asked", weight: 3 },
  { id: "toes", title: "Toes: no undercut, no cold lap", weight: 3 },
  { id: "even", title: "Even ripple and travel along the bead", weight: 2 },
  { id: "ends", title: "Start and crater filled", weight: 1 },
  { id: "clean", title: "Cleaned: slag and spatter gone", weight: 1 },
];

export const emptyExercise: ExerciseContent = ExerciseContentSchema.parse({ rubric: [...usualRubric] });

/** What a student may say of how they ran it; null where they do not know. */
export const RunChoicesSchema = z.object({
  wireFeedMPerMin: RunSetupSchema.shape.wireFeedMPerMin,
  volts: RunSetupSchema.shape.volts,
  ctwdMm: RunSetupSchema.shape.ctwdMm,
  polarity: RunSetupSchema.shape.polarity,
});
export type RunChoices = z.infer<typeof RunChoicesSchema>;

/** The set-up an exercise starts from, with its joint, position and class in it. */
export function startingSetup(content: ExerciseContent): ExerciseContent["setup"] {
  const { setup, joint, position, electrodeClass } = content;
  return {
    ...setup,
    joint: joint ?? setup.joint,
    position: position ?? setup.position,
    electrodeClass: electrodeClass ?? setup.electrodeClass,
  };
}

/**
 * The set-up of a bead handed in: what the student said, and nothing of the exercise. Only where they say that they ran
 * it as asked the exercise's own stands under it, and what they said differently still wins.
 */
export function handInSetup(
  content: ExerciseContent,
  said: RunChoices,
  asAsked: boolean,
): ExerciseContent["setup"] {
  if (!asAsked) return { ...RunSetupSchema.parse({}), ...said };
  const asked = startingSetup(content);
  const { wireFeedMPerMin, volts, ctwdMm, polarity } = said;
  return {
    ...asked,
    wireFeedMPerMin: wireFeedMPerMin ?? asked.wireFeedMPerMin,
    volts: volts ?? asked.volts,
    ctwdMm: ctwdMm ?? asked.ctwdMm,
    polarity: polarity ?? asked.polarity,
  };
}
