import { z } from "zod";
import type { Db } from "@/lib/db";
import type { ChainEnd } from "@/lib/ledger";
import { readSetting, writeSetting } from "@/lib/store";

/** Setting: the entry up to which everything was walked and fitted. The log itself says when it was moved. */
const CHECKED = "verify.checked";
const CheckedSchema = z.object({
  seq: z.string().regex(/^\d{1,15}$/),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  at: z.string().min(1).max(40),
});

/** The entry behind which a daily walk begins; null: none was finished yet. */
export async function lastChecked(db: Db): Promise<ChainEnd | null> {
  const found = await readSetting(db, CHECKED, CheckedSchema);
  return found && { seq: Number(found.seq), hash: found.hash, at: found.at };
}

/** Everything up to this entry was walked, and nothing was found. */
export async function noteChecked(db: Db, { seq, hash, at }: ChainEnd): Promise<void> {
  await writeSetting({ db, by: "system" }, CHECKED, { seq: String(seq), hash, at });
}
