import { issue } from "@/lib/base";
import { danglingRows, type Db } from "@/lib/db";
import type { ChainEnd, LedgerIssue } from "@/lib/ledger";
import type { LogHead } from "@/lib/signature";
import { checkDerived } from "./derived";
import { walkLog } from "./log-walk";
import { checkPhotos } from "./photos";
import { checkFrozen, checkKeys, checkSignatures } from "./signatures";
import { checkStates } from "./states";
import { counter, gathered, wholeWalk, type Walk, type Watch } from "./walk";

export interface Verification {
  readonly entries: number;
  readonly subjects: number;
  readonly photos: number;
  readonly frozen: number;
  /** Signatures by key, over frozen texts and over the log. */
  readonly signatures: number;
  /** Beads whose derived rows were worked out again. */
  readonly derived: number;
  /** Hash of the newest entry; write it down outside this machine, and a log cut off later shows. */
  readonly head: string | null;
  /** The newest entry; a later walk may begin behind it. */
  readonly end: ChainEnd | null;
  readonly findings: readonly LedgerIssue[];
  /** What is worth a word and takes nothing from the records: a log of an earlier version may run back in time. */
  readonly remarks: readonly LedgerIssue[];
}

interface Asked {
  /** A head of the log that was kept elsewhere; where it still stands, nothing before it was changed. */
  readonly noted?: LogHead | null;
  /** Only what came behind this entry, and what that speaks of; null: everything. */
  readonly since?: ChainEnd | null;
  readonly watch?: Watch;
  /** Where the photos are, if not in the data folder. */
  readonly photos?: string;
}

/**
 * Walks the log from its first entry, compares everything there is with what the log last said of it, hashes every
 * original photo and the pictures made from it again, and every frozen text; what follows from the records is worked out
 * again. Reads only, slice by slice, so that memory does not grow with the records but for a hundred bytes a photo, and
 * goes from step to step as it is asked to. What the steps say they found is what the answer says, in its order; remarks
 * are among it. `folder`: the data folder with the installation's key.
 */
export async function* walkRecords(
  db: Db,
  folder: string,
  { noted = null, since = null, photos: place = folder }: Omit<Asked, "watch"> = {},
): Walk<Verification> {
  const found: LedgerIssue[] = [];
  const log = yield* gathered(walkLog(db, { since, noted }), found);
  const only = log.touched;
  const subjects = yield* gathered(checkStates(db, only), found);
  const photos = yield* gathered(checkPhotos(db, place, log), found);
  const frozen = yield* gathered(checkFrozen(db, only), found);
  const last = log.end?.seq ?? 0;
  const signatures = yield* gathered(checkSignatures(db, { last, only }), found);
  yield* gathered(checkKeys(db, folder), found);
  if (only === null) yield* gathered(checkDangling(db), found);
  const derived = yield* gathered(checkDerived(db, only), found);
  return {
    ...{ entries: log.entries, subjects, photos, frozen, signatures, derived },
    head: log.end?.hash ?? null,
    end: log.end,
    remarks: found.filter(isRemark),
    findings: found.filter((one) => !isRemark(one)),
  };
}

/** As `walkRecords`, to the end. Throws the signal's reason where it was stopped. */
export async function verifyRecords(
  db: Db,
  folder: string,
  { watch = {}, ...asked }: Asked = {},
): Promise<Verification> {
  return wholeWalk(walkRecords(db, folder, asked), watch);
}

/** Worth a word, and no fault of the records. */
export const isRemark = ({ code }: LedgerIssue): boolean => code === "time-runs-back";

/** Rows whose key points nowhere. The program cannot write one, and no subject's state would hold it. */
async function* checkDangling(db: Db): Walk<void> {
  const count = counter("rows", 1);
  const rows = await danglingRows(db);
  yield count.step(
    1,
    rows.map(({ table, parent }) => issue("row-dangling" as const, [table], { table, of: parent })),
  );
}
