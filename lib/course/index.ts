export { countedBead } from "./class-bead";
export {
  classCounts,
  intervalText,
  shareText,
  type ClassBead,
  type ClassCount,
  type ClassCounts,
} from "./class-counts";
export { editLayer, startLayer, type LayerAction, type LayerHistory } from "./edit-layer";
export {
  emptyExercise,
  ExerciseContentSchema,
  handInSetup,
  RunChoicesSchema,
  startingSetup,
  type ExerciseContent,
  type RunChoices,
} from "./exercise";
export { CODE_LENGTH, exerciseCode, normaliseCode } from "./exercise-code";
export {
  emptyFeedback,
  FeedbackContentSchema,
  freezeFeedback,
  saysSomething,
  thawFeedback,
  type FeedbackContent,
  type ReturnedFeedback,
} from "./feedback";
export { itemName, itemsOver, MOST_WORDS, withItems, type LayerItem, type LayerPoint } from "./layer";
export { itemAt, itemPrimitives, layerPrimitives, type LayerInk } from "./layer-primitives";
export { wallPage, type WallContent, type WallRow } from "./wall-page";
export { progress, type ProgressBead, type ProgressStep } from "./progress";
export { rubricScore, rubricSteps, scoreText, stepWords, type RubricLine, type RubricMarks } from "./rubric";
