import "server-only";

export { moveInstallation, moveSentence, type Installation } from "./move-installation";
