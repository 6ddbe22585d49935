/** A text as lists sort by it: without marks over letters, in lower case, runs of white space as one space. */
export function foldText(text: string): string {
  return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/\s+/g, " ").trim();
}

/** Sorts behind every name. */
const NO_NAME = "\uffff";
export const welderKey = (welder: string | null): string => (welder === null ? NO_NAME : foldText(welder));
