import { beforeAll, describe, expect, it } from "vitest";
import { createBead, saveBead } from "@/lib/beads";
import type { ChainEnd } from "@/lib/ledger";
import { lastChecked, noteChecked, verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const ids: string[] = [];
let end: ChainEnd;

const look = (since: ChainEnd | null) => verifyRecords(fresh().db, fresh().folder, { since });
const codes = async (since: ChainEnd | null) => (await look(since)).findings.map(({ code }) => code);
const title = (number: number, text: string) =>
  fresh().db.bead.updateMany({ where: { number }, data: { title: text } });

beforeAll(async () => {
  for (const name of ["Old", "New"]) {
    const made = await createBead(fresh().pen, { title: name });
    if (!made.ok) throw new Error("no bead");
    ids.push(made.value.id);
    if (name === "Old") end = (await look(null)).end!;
  }
});

describe("a walk of what is new", () => {
  it("begins behind the last one, and looks at no more than came since", async () => {
    expect(await lastChecked(fresh().db)).toBeNull();
    const found = await look(end);
    expect(found).toMatchObject({ entries: 2, subjects: 1, derived: 1, findings: [] });
    expect(await look(found.end)).toMatchObject({ entries: 2, subjects: 0, derived: 0, findings: [] });
    await noteChecked(fresh().db, found.end!);
    expect(await lastChecked(fresh().db)).toEqual(found.end);
  });

  it("finds what was changed of the new; of the old the whole walk does", async () => {
    await title(2, "Changed");
    expect(await codes(end)).toContain("state-changed");
    await title(2, "New");
    await title(1, "Changed");
    expect(await codes(end)).toEqual([]);
    expect(await codes(null)).toContain("state-changed");
    // Once somebody writes about it, it is new again.
    await title(1, "Old");
    const bead = await fresh().db.bead.findUniqueOrThrow({ where: { id: ids[0]! } });
    const saved = await saveBead(fresh().pen, ids[0]!, bead.revision, {
      ...{ title: "Old, saved", welder: null, setup: bead.setup, judgement: bead.judgement, photos: [] },
    });
    expect(saved.ok).toBe(true);
    await title(1, "Changed");
    expect(await codes(end)).toContain("state-changed");
    await title(1, "Old, saved");
  });

  it("finds that the entry it begins behind is another now, or gone", async () => {
    expect(await codes({ ...end, hash: "0".repeat(64) })).toContain("noted-differs");
    expect(await codes({ ...end, seq: 999 })).toContain("noted-cut");
  });

  it("says how far it is, and is stopped", async () => {
    const parts = new Set<string>();
    const stop = new AbortController();
    const watch = {
      signal: stop.signal,
      onProgress: (part: string) => {
        parts.add(part);
        if (part === "records") stop.abort(new Error("stopped"));
      },
    };
    await expect(verifyRecords(fresh().db, fresh().folder, { watch })).rejects.toThrow("stopped");
    expect([...parts]).toEqual(["log", "records"]);
  });
});
