import type { z } from "zod";
import { writeTogether, type Db, type Tx } from "@/lib/db";
import { writeLog } from "./log";
import type { Pen } from "./pen";

/** A small choice of this installation. What is stored but no longer understood counts as not chosen. */
export async function readSetting<T>(db: Db | Tx, key: string, schema: z.ZodType<T>): Promise<T | null> {
  const row = await db.setting.findUnique({ where: { key } });
  const parsed = schema.safeParse(row?.value);
  return parsed.success ? parsed.data : null;
}

export async function writeSetting(
  { db, by }: Pen,
  key: string,
  value: string | boolean | Record<string, string>,
): Promise<void> {
  await writeTogether(db, async (tx) => {
    await tx.setting.upsert({ where: { key }, create: { key, value }, update: { value } });
    await writeLog(tx, { by, subject: `setting:${key}`, action: "setting.written" });
  });
}
