export { atlasEntry, type AtlasEntry } from "./entry";
export { symbolWords } from "./limit-words";
export { type LimitRow, type LimitTable } from "./limits";
export { pictureAt, severities, severityWords, smallPicture, type CloseUpPicture } from "./pictures";
