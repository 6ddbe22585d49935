import { beforeEach, describe, expect, it, vi } from "vitest";
import { deleteBeadsAction, restoreBeadsAction } from "@/app/beads/bulk-actions";
import { createBead, getBead } from "@/lib/beads";
import type { Db } from "@/lib/db";
import type { Actor } from "@/lib/people";
import { addPerson } from "@/lib/roster";
import { useFreshDb } from "../setup/fresh-db";

const asking = vi.hoisted(() => ({ actor: { kind: "nobody" } as unknown, db: null as unknown }));
vi.mock("next/headers", () => ({ headers: async () => new Headers(), cookies: async () => new Map() }));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));
vi.mock("@/lib/db", async (original) => ({ ...(await original<object>()), db: () => asking.db as Db }));
vi.mock("@/lib/account", async (original) => ({
  ...(await original<object>()),
  readActor: async () => asking.actor,
}));

const fresh = useFreshDb();
const welder = (personId: string): Actor => ({
  kind: "person",
  personId,
  role: "welder",
  also: [],
  scopes: null,
});
let [own, other] = ["", ""];

async function bead(welderId: string): Promise<string> {
  const made = await createBead(fresh().pen, { title: "Tee", welderId });
  if (!made.ok) throw new Error("no bead");
  return made.value.id;
}
async function person(name: string): Promise<string> {
  const made = await addPerson(fresh().pen, { name, mark: null, role: "welder" });
  if (!made.ok) throw new Error("no person");
  return made.value.id;
}

beforeEach(async () => {
  asking.db = fresh().db;
  own = await person(`Own ${Math.random()}`);
  other = await person(`Other ${Math.random()}`);
  asking.actor = welder(own);
});

describe("deleting several", () => {
  it("does what can be done, and says of the others why not", async () => {
    const [mine, second, theirs] = [await bead(own), await bead(own), await bead(other)];
    const said = await deleteBeadsAction([mine, theirs, "never-was", second]);
    expect(said.done.map(({ id }) => id)).toEqual([mine, second]);
    expect(said.refused.map(({ id }) => id)).toEqual([theirs, "never-was"]);
    // Of somebody else's bead it is not said that it is there.
    expect(new Set(said.refused.map(({ why }) => why)).size).toBe(1);
    expect(await getBead(fresh().db, theirs)).not.toBeNull();
    expect(await getBead(fresh().db, mine)).toBeNull();

    const back = await restoreBeadsAction(said.done.flatMap(({ deletedId }) => deletedId ?? []));
    expect(back.refused).toEqual([]);
    expect(await getBead(fresh().db, mine)).not.toBeNull();
    expect(await getBead(fresh().db, second)).not.toBeNull();
  });

  it("brings back nothing of somebody else's", async () => {
    const mine = await bead(own);
    const { done } = await deleteBeadsAction([mine]);
    asking.actor = welder(other);
    const back = await restoreBeadsAction(done.flatMap(({ deletedId }) => deletedId ?? []));
    expect(back.done).toEqual([]);
    expect(await getBead(fresh().db, mine)).toBeNull();
  });

  it("asks nobody twice: a bead named twice is deleted once", async () => {
    const mine = await bead(own);
    expect((await deleteBeadsAction([mine, mine])).done).toHaveLength(1);
  });

  it("is not for whoever may not delete", async () => {
    asking.actor = { kind: "nobody" };
    await expect(deleteBeadsAction([])).rejects.toThrow("refused: bead.delete");
  });
});
