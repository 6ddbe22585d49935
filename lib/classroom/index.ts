import "server-only";

export {
  createExercise,
  exerciseByCode,
  getExercise,
  listExercises,
  renewCode,
  saveExercise,
  setExerciseOpen,
  type ExerciseRecord,
} from "./exercises";
export { getFeedback, replyToFeedback, returnFeedback, saveFeedback } from "./feedback";
export { handInBead, HandInFormSchema, handInPhoto, takingExercise, withdrawHandIn } from "./hand-ins";
export { addPhrase, changePhrase, deletePhrase, listPhrases, movePhrase } from "./phrases";
export {
  countWaiting,
  getHandIn,
  handInBySecret,
  handInThing,
  listHandIns,
  type HandInRecord,
} from "./read-hand-ins";
