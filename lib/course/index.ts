export { countedBead } from "./class-bead";
export {
  classCounts,
  ENOUGH_FOR_PERCENT,
  intervalText,
  shareText,
  type ClassBead,
  type ClassCount,
  type ClassCounts,
  type RepeatedCause,
} from "./class-counts";
export { editLayer, startLayer, type LayerAction, type LayerHistory } from "./edit-layer";
export {
  emptyExercise,
  ExerciseContentSchema,
  handInSetup,
  RunChoicesSchema,
  startingSetup,
  usualRubric,
  type ExerciseContent,
  type RunChoices,
} from "./exercise";
export { CODE_LENGTH, codeLetters, exerciseCode, normaliseCode } from "./exercise-code";
export {
  emptyFeedback,
  FeedbackContentSchema,
  freezeFeedback,
  ReturnedFeedbackSchema,
  saysSomething,
  thawFeedback,
  type FeedbackContent,
  type ReturnedFeedback,
} from "./feedback";
export {
  itemName,
  itemsOver,
  LayerItemSchema,
  layerItemWords,
  LayerSchema,
  MOST_LAYER_ITEMS,
  MOST_WORDS,
  withItems,
  type Layer,
  type LayerItem,
  type LayerPoint,
} from "./layer";
export {
  distanceToItem,
  itemAt,
  itemPrimitives,
  layerPrimitives,
  wordsAt,
  wrapWords,
  type LayerInk,
} from "./layer-primitives";
export { wallPage, type WallContent, type WallRow } from "./wall-page";
export { progress, type ProgressBead, type ProgressStep } from "./progress";
export {
  RubricLineSchema,
  rubricScore,
  RubricSchema,
  rubricSteps,
  scoreText,
  stepWords,
  type RubricLine,
  type RubricMarks,
  type RubricScore,
  type RubricStep,
} from "./rubric";
