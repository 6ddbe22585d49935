import { expect, it } from "vitest";
import { fail, issue, ok } from "@/lib/base";
import { newId, writing } from "@/lib/store";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();

it("a refusal takes back what was written before it, and the log says nothing of it", async () => {
  const { db, pen } = fresh();
  const id = newId();
  const add = (refuses: boolean) =>
    writing(pen, async (tx, log) => {
      await tx.group.create({ data: { id, name: "Evening class" } });
      await log(`group:${id}`, "group.added");
      return refuses ? fail(issue("group-gone")) : ok(null);
    });
  const [groups, entries] = [await db.group.count(), await db.logEntry.count()];
  expect(await add(true)).toEqual(fail(issue("group-gone")));
  expect([await db.group.count(), await db.logEntry.count()]).toEqual([groups, entries]);
  expect(await add(false)).toEqual(ok(null));
  expect([await db.group.count(), await db.logEntry.count()]).toEqual([groups + 1, entries + 1]);
});
