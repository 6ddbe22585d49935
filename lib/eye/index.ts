export { attributeStudy, type AttributeStudy } from "./attribute-study";
export { eyeTotals, ratesByKind } from "./by-kind";
export { EyeBeadSchema, eyeLooks, type EyeBead, type EyeLook } from "./eye-bead";
export { eyeLevels, type EyeLevel } from "./fails-level";
export {
  BEADS_A_ROUND,
  EyeRoundSchema,
  kindProgress,
  nextBeadId,
  scoreRound,
  type EyeRound,
  type ScoredBead,
} from "./round";
export { EyeAnswerSchema, type EyeMark } from "./score-bead";
