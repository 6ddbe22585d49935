import "server-only";

export { drawMore, drawnBeads, drawnPicture, readDrawn } from "./pool";
export { answerBead, getRound, listRounds, startRound, startSameRound, type RoundRecord } from "./rounds";
