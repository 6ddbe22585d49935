import "server-only";

export {
  copyExercise,
  createExercise,
  exerciseByCode,
  getExercise,
  listExercises,
  renewCode,
  saveExercise,
  setExerciseOpen,
  type ExerciseRecord,
} from "./exercises";
export {
  getFeedback,
  markSeen,
  replyToFeedback,
  returnedFeedbacks,
  returnFeedback,
  saveFeedback,
} from "./feedback";
export { linkHandIns, reissueAddress } from "./hand-in-names";
export { handInBead, HandInFormSchema, handInPhoto, takingExercise, withdrawHandIn } from "./hand-ins";
export { newsBetween } from "./news";
export { addPhrase, changePhrase, deletePhrase, listPhrases, movePhrase } from "./phrases";
export {
  countWaiting,
  getHandIn,
  handInBySecret,
  handInThing,
  listHandIns,
  waitingFor,
  type HandInRecord,
} from "./read-hand-ins";
