export { countedBead } from "./class-bead";
export {
  classCounts,
  intervalText,
  shareText,
  spreadText,
  type ClassBead,
  type ClassCount,
  type ClassCounts,
} from "./class-counts";
export { countsAs, foundByLayers } from "./counts-as";
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
export {
  gradebook,
  handInStateWords,
  shareWords,
  type GradeCell,
  type Gradebook,
  type GradedHandIn,
} from "./gradebook";
export {
  countsAsWords,
  itemName,
  itemsOver,
  MOST_WORDS,
  withItems,
  type LayerItem,
  type LayerPoint,
} from "./layer";
export { itemAt, itemPrimitives, layerPrimitives, type LayerInk } from "./layer-primitives";
export { wallPage, type WallContent, type WallRow } from "./wall-page";
export { progress, type BeadLikeness, type ProgressBead, type ProgressStep } from "./progress";
export { rubricScore, rubricSteps, scoreText, stepWords, type RubricLine, type RubricMarks } from "./rubric";
export { pressLine, restThere } from "./rubric-presses";
