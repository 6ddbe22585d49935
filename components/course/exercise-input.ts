import type { ExerciseContent } from "@/lib/course";

/** An exercise as its form holds it. */
export interface ExerciseInput {
  readonly title: string;
  readonly content: ExerciseContent;
  readonly open: boolean;
  readonly withoutAccount: boolean;
  /** ISO 8601, UTC. */
  readonly dueAt: string | null;
}
