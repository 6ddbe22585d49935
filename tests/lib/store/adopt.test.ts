import { expect, it } from "vitest";
import { adoptUnlogged } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();

it("what was there before the log is entered once, and never again when the log has begun", async () => {
  const { db, folder } = fresh();
  const put = (id: string, number: number) =>
    db.bead.create({ data: { id, number, title: "From before", setup: {}, judgement: {} } });
  await put("first", 1);
  expect((await verifyRecords(db, folder)).findings.map(({ code }) => code)).toEqual(["state-unlogged"]);
  expect(await adoptUnlogged(db)).toBe(1);
  expect((await verifyRecords(db, folder)).findings).toEqual([]);
  // Put in behind the program's back: adopting again must not launder it.
  await put("second", 2);
  expect(await adoptUnlogged(db)).toBe(0);
  expect((await verifyRecords(db, folder)).findings.map(({ code }) => code)).toEqual(["state-unlogged"]);
});
