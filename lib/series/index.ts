import "server-only";

export {
  beginByCard,
  cardOfBead,
  createCard,
  getCard,
  listCards,
  retireCard,
  withOwnBeads,
  type CardRecord,
} from "./cards";
export { beginRun, createTrial, getTrial, listTrials, trialOfBead, type TrialRecord } from "./trials";
