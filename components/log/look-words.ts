import { isGoing, type Look, type Looked } from "./look";

/** What is looked at, as a screen calls it; the keys are those of the verifier. */
const partWords: Readonly<Record<string, string>> = {
  log: "log entries",
  records: "records against the log",
  "unlogged records": "records that the log does not know",
  photos: "photos",
  "frozen texts": "frozen texts",
  signatures: "signatures",
  keys: "keys",
  rows: "rows that belong to nothing",
  "lists and figures": "what lists and figures say",
};

const nameOf = ({ part }: Looked): string => partWords[part] ?? part;
const grouped = (count: number): string =>
  count < 10_000 ? `${count}` : `${count}`.replace(/\B(?=(\d{3})+$)/g, "\u00a0");

/** "records against the log: 3400 of 12 000" */
export const howFar = (one: Looked): string =>
  one.of === 0 ? nameOf(one) : `${nameOf(one)}: ${grouped(one.looked)} of ${grouped(one.of)}`;

const quarters = ["", ", a quarter done", ", half done", ", three quarters done", ""] as const;
/** What takes no time is not read out by quarters. */
const LONG = 500;

/** What is read out while it looks: that changes with each part, and with each quarter of a long one. */
export function spokenOf({ state, parts, place, most }: Look): string {
  if (state === "waiting") return "Waiting for a turn.";
  const now = parts.at(-1);
  if (state !== "looking" || !now) return "";
  const quarter = now.of < LONG ? 0 : Math.floor((4 * now.looked) / now.of);
  return `Looking at ${nameOf(now)}, part ${place} of ${most}${quarters[quarter] ?? ""}.`;
}

const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** "5 log entries, 3 records, …" */
const countsOf = ({ counts }: Look): string =>
  [
    counted(counts?.["entries"] ?? 0, "log entry", "log entries"),
    counted(counts?.["subjects"] ?? 0, "record"),
    counted(counts?.["photos"] ?? 0, "photo"),
    counted(counts?.["frozen"] ?? 0, "frozen text"),
    counted(counts?.["signatures"] ?? 0, "signature"),
  ].join(", ");

const findings = (count: number): string => (count === 1 ? "One finding" : `${count} findings`);
const KEEP = "Keep a copy of the data folder before anything is repaired.";

/** How far a look came that did not come to its end, and that this is no more. */
function reached({ parts, found, place, most }: Look): string {
  const far =
    parts.length === 0 ? "Nothing was looked at yet." : `It had looked at ${parts.map(howFar).join("; ")}.`;
  const rest = parts.length === 0 ? "" : ` That is part ${place} of ${most}; the rest was not looked at.`;
  const sofar = found === 0 ? "" : ` ${findings(found)} until then. ${KEEP}`;
  return `${far}${rest}${sofar} It says nothing of whether the records fit.`;
}

/** What came of it; empty while it is going. */
export function outcomeOf(look: Look): string {
  if (isGoing(look)) return "";
  switch (look.state) {
    case "fits":
      return `Everything fits: ${countsOf(look)}.`;
    case "does-not-fit":
      return `${findings(look.found)} among ${countsOf(look)}. ${KEEP}`;
    case "stopped":
      return `Stopped before everything was looked at. ${reached(look)}`;
    case "refused":
      return look.why ?? "The records could not be read just now. Reload the page and try again.";
    default:
      return `The look broke off before everything was looked at. ${look.why ? `${look.why} ` : ""}${reached(look)} Press “Verify everything” to begin again.`;
  }
}
