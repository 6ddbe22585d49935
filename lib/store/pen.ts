import { type Result } from "@/lib/base";
import { writeTogether, type Db, type Tx } from "@/lib/db";
import { guardStore } from "./guard-store";
import { writeLog, type LogWords } from "./log";
import type { RecordIssue } from "./record-issue";

/** Whoever writes needs both: where to, and in whose name it stands in the log. Reading needs only the `Db`. */
export interface Pen {
  readonly db: Db;
  /** actorRef(actor) of lib/people: "owner", "person:ID", "hand-in:ID", "system". */
  readonly by: string;
}

/** Writes one log entry; call it after the change itself, so that it seals the new state. */
export type Log = (subject: string, action: string, detail?: LogWords) => Promise<void>;

/** Carries a refusal out of its transaction, which takes everything written back on the way. */
class Refused<T> extends Error {
  constructor(readonly answer: Result<T, RecordIssue>) {
    super("refused");
  }
}

/** One change: everything `work` writes and what the log says of it stand together or not at all; refused is not at all. */
export function writing<T>(
  pen: Pen,
  work: (tx: Tx, log: Log) => Promise<Result<T, RecordIssue>>,
): Promise<Result<T, RecordIssue>> {
  return guardStore(async () => {
    try {
      return await writeTogether(pen.db, async (tx) => {
        const log: Log = (subject, action, detail) => writeLog(tx, { by: pen.by, subject, action, detail });
        const answer = await work(tx, log);
        if (!answer.ok) throw new Refused(answer);
        return answer;
      });
    } catch (error) {
      if (error instanceof Refused) return error.answer as Result<T, RecordIssue>;
      throw error;
    }
  });
}
