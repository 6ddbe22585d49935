import type { RowLimit, Verdict, VerdictRow } from "@/lib/accept";
import { inch, metric, type UnitPreferences } from "@/lib/units";
import { figureWords, readBy, type MarkNumber } from "./reading-words";
import { lengthText, statedLengthText } from "./length-text";
import { figureText, rowValueText } from "./row-text";
import { missingSentences, reasonWords } from "./verdict-words";

export interface RowWords {
  /** How the person reads lengths. */
  readonly units: UnitPreferences;
  /** Which of its two unit systems the code was applied in. */
  readonly codeUnits: "si" | "us";
  readonly markNumber: MarkNumber;
}

/** The unit system in which a verdict's limits are stated. */
export function codeUnitsOf({ settings }: Pick<Verdict, "settings">): RowWords["codeUnits"] {
  return settings["units"] === "us" ? "us" : "si";
}

/**
 * One row as one sentence: what was read on which mark or with which reading, the limit in the code's own unit, why it
 * is met, failed or open, and what is missing with the gauge that gives it.
 */
export function rowSentence(row: VerdictRow, words: RowWords): string {
  const { units, markNumber } = words;
  const by = readBy(row.readingsUsed, markNumber);
  // That none is allowed needs no count against nought.
  const none = row.reason === "none-allowed";
  const read = none ? "" : rowValueText(row, units);
  const value = read === "" ? by : by === "" ? read : `${by}: ${read}`;
  const limit = none ? "" : limitWords(row, words);
  const said = [value, limit, reasonWords[row.reason]].filter(Boolean).join("; ");
  const missing = missingSentences(row.missing, markNumber);
  const wants = missing.length > 0 ? ` ${wantWords(row)}: ${missing.join("; ")}.` : "";
  const coarse = row.coarse
    ? " Its uncertainty is more than a third of the limit: a finer gauge would say more."
    : "";
  return `${capital(said)}.${wants}${coarse}${guessWords(row)}`;
}

/** The row went by a count that somebody made by eye. */
const guessWords = ({ figuresUsed }: VerdictRow): string =>
  figuresUsed.some((figure) => figure.endsWith(".aboutCount"))
    ? " How many is a count by eye: no more than half of it is taken as certain."
    : "";

/** What is missing settles an open row; beside a failed one it is what would show that only a part fails. */
function wantWords({ result }: VerdictRow): string {
  return result === "fails" ? "It counts for the whole bead unless this is read" : "Missing";
}

function limitWords(row: VerdictRow, words: RowWords): string {
  if (row.limit) return limitText(row.limit, words);
  if (row.limitsPossible.length < 2) return "";
  return row.limitsPossible.map((limit) => limitText(limit, words)).join(" or ");
}

/** "at most 1/32 in (0.79 mm)": first as the code has it, then as the person reads it where that differs. */
export function limitText({ comparison, value, unit, formula }: RowLimit, words: RowWords): string {
  const word = comparison === "<=" ? "at most" : "at least";
  // A formula that is only the number again says nothing.
  const how = Number.isFinite(Number(formula)) ? "" : `, ${formula}`;
  if (unit !== "mm" || value < 0) return `${word} ${figureText(value, null, unit, words.units)}${how}`;
  const inCode = words.codeUnits === "us" ? statedLengthText(value, inch) : lengthText(value, metric);
  const own = lengthText(value, words.units);
  const isSame = (words.codeUnits === "us") === (words.units.length !== "mm");
  return `${word} ${inCode}${isSame || own === inCode ? "" : ` (${own})`}${how}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * What somebody read and no row went by, in one sentence; empty when everything was used. Sizes that the photo gave by
 * itself are no reading anybody waits to see used.
 */
export function unusedSentence({ unused }: Pick<Verdict, "unused">, markNumber: MarkNumber): string {
  const list = (why: Verdict["unused"][number]["why"]): string =>
    unused
      .filter((one) => one.why === why && one.by === "hand")
      .map(({ figure }) => figureWords(figure, markNumber))
      .join(", ");
  const noRule = list("no-rule");
  const notNeeded = list("not-needed");
  const guess = list("guess");
  return [
    noRule === "" ? "" : `Read, but no clause here asks for it: ${noRule}.`,
    notNeeded === "" ? "" : `Read, but decided without it: ${notNeeded}.`,
    guess === "" ? "" : `Not judged from a guess: ${guess}.`,
  ]
    .filter(Boolean)
    .join(" ");
}
