import { performance } from "node:perf_hooks";
import { dataDir, db, photoPlace } from "@/lib/db";
import { ledgerSentence } from "@/lib/ledger";
import type { LogHead } from "@/lib/signature";
import { isRemark, walkParts, walkRecords, type Part, type Verification, type WalkStep } from "@/lib/verify";
import type { Work } from "./words";

/** How often somebody is told how far it is, at most, ms. */
const TELL_MS = 250;

/**
 * What a look at all records says, each a line of JSON. Nothing but "ended" says that it came to its end: without that
 * line the rest was not looked at.
 */
export type LookSaid =
  | {
      readonly says: "looking";
      /** Which part of them, and how many there are: "2, of 10". */
      readonly part: Part;
      readonly place: number;
      readonly parts: number;
      readonly looked: number;
      readonly of: number;
    }
  | { readonly says: "found"; readonly findings: readonly string[]; readonly remarks: readonly string[] }
  | {
      readonly says: "ended";
      readonly looked: Readonly<Record<Counted, number>>;
      /** "NUMBER:HASH" of the newest entry; null: the log is empty. */
      readonly head: string | null;
      /** How many sentences were said before. */
      readonly findings: number;
    };

type Counted = "entries" | "subjects" | "photos" | "frozen" | "signatures" | "derived";

export interface LookAsked {
  /** A head of the log that was kept elsewhere. */
  readonly noted: LogHead | null;
}

const line = (said: LookSaid): string => `${JSON.stringify(said)}\n`;

/** Everything looked at, as `npm run verify` does: how far it is at most four times a second, what was found at once. */
export const look: Work<LookAsked, null> = async (asked) => ({ head: null, parts: lines(asked) });

async function* lines({ noted }: LookAsked): AsyncGenerator<string, void, void> {
  const walk = walkRecords(db(), dataDir(), { noted, photos: photoPlace() });
  let told = 0;
  try {
    for (;;) {
      const { value, done } = await walk.next();
      if (done) return yield line(endOf(value));
      if (value.findings.length > 0) yield line(foundIn(value));
      // The end of a part is told always, however soon it comes.
      if (value.looked < value.of && performance.now() - told < TELL_MS) continue;
      told = performance.now();
      yield line(lookingAt(value));
    }
  } finally {
    // Whoever stops reading stops it.
    await walk.return(undefined as never);
  }
}

const lookingAt = ({ part, looked, of }: WalkStep): LookSaid => ({
  ...{ says: "looking", part, looked, of },
  ...{ place: walkParts.indexOf(part) + 1, parts: walkParts.length },
});

const foundIn = ({ findings }: WalkStep): LookSaid => ({
  says: "found",
  findings: findings.filter((one) => !isRemark(one)).map(ledgerSentence),
  remarks: findings.filter(isRemark).map(ledgerSentence),
});

function endOf({ entries, subjects, photos, frozen, signatures, derived, ...rest }: Verification): LookSaid {
  return {
    says: "ended",
    looked: { entries, subjects, photos, frozen, signatures, derived },
    head: rest.head && `${entries}:${rest.head}`,
    findings: rest.findings.length,
  };
}
