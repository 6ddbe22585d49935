import { beforeAll, describe, expect, it } from "vitest";
import { emptyRunSetup, RunSetupSchema } from "@/lib/setup";
import { plannedBead } from "@/lib/assess";
import { createBead } from "@/lib/beads";
import { deleteSetup, lastSetup, listSavedSetups, saveSetup } from "@/lib/shop";
import { stateDigest } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const at = (volts: number) => RunSetupSchema.parse({ volts });
const shown = async (personId: string | null) =>
  (await listSavedSetups(fresh().db, personId)).map(({ name, own, setup }) => [name, own, setup.volts]);
const idOf = async (personId: string | null, own: boolean) =>
  (await listSavedSetups(fresh().db, personId)).find((one) => one.own === own)!.id;

beforeAll(async () => {
  expect((await saveSetup(fresh().pen, "Lap", at(18))).ok).toBe(true);
});

describe("a set-up that is saved over", () => {
  it("keeps what it was, the newest first, ten of them; the same again changes nothing", async () => {
    const { pen, db } = fresh();
    const day = (count: number) => new Date(Date.UTC(2026, 10, 1 + count));
    const entries = () => db.logEntry.count();
    for (let i = 0; i < 13; i += 1) await saveSetup(pen, "Corner", at(10 + i), "p9", day(i));
    const before = await entries();
    await saveSetup(pen, "Corner", at(22), "p9", day(13));
    expect(await entries()).toBe(before);
    const corner = (await listSavedSetups(db, "p9")).find(({ name }) => name === "Corner")!;
    expect(corner.setup.volts).toBe(22);
    expect(corner.earlier.map(({ setup }) => setup.volts)).toEqual([21, 20, 19, 18, 17, 16, 15, 14, 13, 12]);
    expect(corner.earlier[0]?.until).toBe(day(12).toISOString());
    expect((await verifyRecords(db, fresh().folder)).findings).toEqual([]);
  });
});

describe("a person's own set-up", () => {
  it("of the same name stands beside the shop's and never replaces it, nor another person's", async () => {
    expect((await saveSetup(fresh().pen, "Lap", at(25), "p1")).ok).toBe(true);
    expect((await saveSetup(fresh().pen, "Lap", at(26), "p2")).ok).toBe(true);
    expect((await saveSetup(fresh().pen, "Lap", at(27), "p1")).ok).toBe(true);
    expect(await shown(null)).toEqual([["Lap", false, 18]]);
    expect((await shown("p1")).sort()).toEqual([
      ["Lap", false, 18],
      ["Lap", true, 27],
    ]);
    expect((await saveSetup(fresh().pen, "Lap", at(19))).ok).toBe(true);
    expect((await shown("p2")).sort()).toEqual([
      ["Lap", false, 19],
      ["Lap", true, 26],
    ]);
  });

  it("is removed by its person alone, the shop's by whoever keeps it", async () => {
    const shops = await idOf(null, false);
    expect((await deleteSetup(fresh().pen, shops, "p1")).ok).toBe(false);
    expect((await deleteSetup(fresh().pen, await idOf("p2", true), "p1")).ok).toBe(false);
    expect((await deleteSetup(fresh().pen, await idOf("p1", true), null)).ok).toBe(false);
    expect((await deleteSetup(fresh().pen, await idOf("p1", true), "p1")).ok).toBe(true);
    expect(await shown("p1")).toEqual([["Lap", false, 19]]);
  });

  it("leaves the shop's in the state that was sealed before there were own ones", async () => {
    const saved = await saveSetup(fresh().pen, "Never saved over", at(20));
    const id = saved.ok ? saved.value.id : "";
    const row = await fresh().db.savedSetup.findUnique({ where: { id } });
    const { canonicalJson } = await import("@/lib/base");
    const { sha256Text } = await import("@/lib/store");
    const { ownerId: _, earlier: ___, updatedAt: __, createdAt, ...before } = row!;
    const sealed = sha256Text(canonicalJson({ ...before, createdAt: createdAt.toISOString() }));
    expect(await stateDigest(fresh().db, `setup:${id}`)).toBe(sealed);
  });
});

describe("the set-up of the last bead", () => {
  it("is of the last that says how it was run: planned alone or empty ones are passed over", async () => {
    const { db, pen } = fresh();
    expect(await lastSetup(db, "")).toBeNull();
    const run = RunSetupSchema.parse({ volts: 17.5, joint: "tee", thicknessMm: 6 });
    const made = await createBead(pen, { setup: run });
    await createBead(pen, plannedBead(run));
    await createBead(pen, { setup: emptyRunSetup });
    expect(await lastSetup(db, "")).toEqual(run);
    expect(await lastSetup(db, made.ok ? made.value.id : "")).toBeNull();
  });
});
