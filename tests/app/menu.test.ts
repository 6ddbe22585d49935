import { describe, expect, it } from "vitest";
import { menuFor } from "@/app/_door/menu";
import { ownerHere, nobody, reach, roles, type Actor } from "@/lib/people";

const actors: readonly Actor[] = [
  ownerHere,
  ...roles.map((role): Actor => ({ kind: "person", personId: "p1", role, scopes: null })),
];
const nameOf = (actor: Actor) => (actor.kind === "person" ? actor.role : actor.kind);

describe("the places that are offered", () => {
  it.each(actors.map((actor) => [nameOf(actor), actor] as const))(
    "%s: at most four in sight beside the new bead and more, each place once",
    (_, actor) => {
      const { main, more } = menuFor(actor);
      expect(main.length).toBeGreaterThan(1);
      expect(main.length).toBeLessThanOrEqual(4);
      const hrefs = [...main, ...more].map(({ href }) => href);
      expect(new Set(hrefs).size).toBe(hrefs.length);
      expect(main[0]?.href).toBe("/");
    },
  );

  it("are those that each may open: the owner all, the others what their deeds reach", () => {
    const all = (actor: Actor) => [...menuFor(actor).main, ...menuFor(actor).more].map(({ href }) => href);
    const welder = actors.find((actor) => actor.kind === "person" && actor.role === "welder")!;
    expect(all(welder)).not.toContain("/jobs");
    expect(all(welder)).not.toContain("/log");
    for (const actor of actors) {
      expect(all(ownerHere)).toEqual(expect.arrayContaining(all(actor)));
      expect(all(actor).includes("/jobs")).toBe(reach(actor, "job.read") !== null);
      expect(all(actor).includes("/feedback")).toBe(reach(actor, "feedback.write") !== null);
    }
  });

  it("are none for who is nobody here, nor a bead to begin", () => {
    for (const actor of [nobody, { kind: "hand-in", handInId: "h", beadId: "b" } as const]) {
      const { main, more, mayStart } = menuFor(actor);
      expect(mayStart).toBe(false);
      if (actor.kind === "nobody") expect([...main, ...more]).toEqual([]);
    }
  });
});
