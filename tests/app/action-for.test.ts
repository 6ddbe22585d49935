import { beforeEach, describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { actionFor, actionOn, anything, basedOn, form, id, openAction } from "@/app/_door/action-for";
import type { Actor } from "@/lib/people";

const asking = vi.hoisted(() => ({ actor: { kind: "nobody" } as unknown }));
vi.mock("next/headers", () => ({ headers: async () => new Headers() }));
vi.mock("@/lib/db", () => ({ db: () => ({}) }));
vi.mock("@/lib/account", async (original) => ({
  ...(await original<object>()),
  readActor: async () => asking.actor,
}));

const as = (actor: Actor) => (asking.actor = actor);
const person = (role: "welder" | "inspector" | "instructor" | "owner", personId = "me"): Actor => ({
  kind: "person",
  personId,
  role,
  also: [],
  scopes: null,
});
const work = vi.fn(async (...sent: unknown[]) => sent.slice(1));

beforeEach(() => {
  work.mockClear();
  as({ kind: "nobody" });
});

describe("an action", () => {
  const save = actionFor("job.write", [id, basedOn, anything], work);

  it("works for whoever may, with what was sent", async () => {
    as(person("inspector"));
    expect(await save("j1", 3, { title: "Frame" })).toEqual(["j1", 3, { title: "Frame" }]);
  });

  it.each([{ kind: "nobody" }, person("welder")] as Actor[])("does nothing for %o", async (actor) => {
    as(actor);
    await expect(save("j1", 3, {})).rejects.toThrow("refused: job.write");
    expect(work).not.toHaveBeenCalled();
  });

  it("asks who is there before it looks at what was sent", async () => {
    await expect(save({} as never, -1, {})).rejects.toThrow("refused: job.write");
  });

  it.each([
    ["an id that is a question to the store", [{ contains: "" }, 3, {}]],
    ["a revision that is none", ["j1", 1.5, {}]],
    ["too little", ["j1"]],
  ])("does nothing with %s", async (_, sent) => {
    as(person("inspector"));
    await expect(save(...(sent as [string, number, unknown]))).rejects.toThrow(z.ZodError);
    expect(work).not.toHaveBeenCalled();
  });

  it("leaves away what a form sends besides", async () => {
    as(person("inspector"));
    const more = save as (...sent: unknown[]) => Promise<unknown>;
    expect(await more("j1", 3, {}, { ok: true }, new FormData())).toEqual(["j1", 3, {}]);
  });
});

describe("an action on a thing", () => {
  const reply = actionOn("bead.write", [id, form], async (personId) => ({ personId }), work);

  it("works for whose it is, and for nobody else of their role", async () => {
    as(person("welder", "me"));
    const sent = new FormData();
    expect(await reply("me", sent)).toEqual(["me", sent]);
    await expect(reply("other", sent)).rejects.toThrow("refused: bead.write");
    expect(work).toHaveBeenCalledTimes(1);
  });
});

describe("an open action", () => {
  it("still reads what was sent", async () => {
    const open = openAction([id], async (secret) => secret);
    expect(await open("s")).toBe("s");
    await expect(open({ not: "" } as never)).rejects.toThrow(z.ZodError);
  });
});
