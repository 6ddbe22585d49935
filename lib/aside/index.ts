import "server-only";

export { doAside, drawPaper } from "./do-aside";
export { asideSentence, unlessStopped, type AsideIssue } from "./stopped";
export type { Done } from "./words";
