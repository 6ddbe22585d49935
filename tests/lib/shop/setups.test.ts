import { beforeAll, describe, expect, it } from "vitest";
import { RunSetupSchema } from "@/lib/setup";
import { deleteSetup, listSavedSetups, saveSetup } from "@/lib/shop";
import { stateDigest } from "@/lib/store";
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
    const id = await idOf(null, false);
    const row = await fresh().db.savedSetup.findUnique({ where: { id } });
    const { canonicalJson } = await import("@/lib/base");
    const { sha256Text } = await import("@/lib/store");
    const { ownerId: _, updatedAt: __, createdAt, ...before } = row!;
    const sealed = sha256Text(canonicalJson({ ...before, createdAt: createdAt.toISOString() }));
    expect(await stateDigest(fresh().db, `setup:${id}`)).toBe(sealed);
  });
});
