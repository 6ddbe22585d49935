import { expect, it } from "vitest";
import { factsDiffering } from "@/lib/beads";
import { growShop } from "@/lib/demo/grow-shop";
import { addPerson } from "@/lib/roster";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();

it("what the shortcut writes is what saving each bead would have left", async () => {
  const { db, pen, folder } = fresh();
  const person = await addPerson(pen, { name: "Marit Oddny", mark: "W-07", role: "welder" });
  const welderIds = person.ok ? [person.value.id] : [];
  const until = new Date("2026-11-26T12:00:00Z");
  await growShop(pen, { beads: 250, seed: 5, until });
  await growShop(pen, { beads: 30, seed: 6, until, welderIds });
  const beads = await listBeads(db);
  expect(beads.map(({ number }) => number).sort((a, b) => a - b)).toEqual(
    Array.from({ length: 280 }, (_, i) => i + 1),
  );
  // Every one worked out again, by itself: rows, words for lists, marks.
  const differing: number[] = [];
  for (const { id, number } of beads) if ((await factsDiffering(db, [id])).has(id)) differing.push(number);
  expect(differing).toEqual([]);
  // The photos have no file here; everything else is as the log sealed it.
  const { findings, entries } = await verifyRecords(db, folder);
  expect(findings.filter(({ code }) => code !== "photo-missing")).toEqual([]);
  expect(entries).toBe(281);
}, 240_000);
