import "server-only";

export { moveInstallation, moveSentence, type Installation, type Moved } from "./move-installation";
