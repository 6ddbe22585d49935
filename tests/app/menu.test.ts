import { describe, expect, it } from "vitest";
import { desksFor, menuFor } from "@/app/_door/menu";
import { ownerHere, nobody, reach, roles, type Actor, type HeldRoles } from "@/lib/people";
import { everySet, singles } from "../lib/people/every-set";

const actors: readonly Actor[] = [
  ownerHere,
  ...roles.map((role): Actor => ({ kind: "person", personId: "p1", role, also: [], scopes: null })),
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

describe("the places of somebody with several roles", () => {
  const as = (held: HeldRoles): Actor => ({ kind: "person", personId: "p1", ...held, scopes: null });
  const all = (held: HeldRoles) => [...menuFor(as(held)).main, ...menuFor(as(held)).more];
  const names = (held: HeldRoles) => new Set(all(held).map(({ name }) => name));

  it.each(everySet)("$role, $also: are those of each of them, each once, at most five in sight", (held) => {
    expect(names(held)).toEqual(new Set(singles(held).flatMap((one) => [...names(one)])));
    expect(all(held)).toHaveLength(names(held).size);
    expect(new Set(all(held).map(({ href }) => href)).size).toBe(names(held).size);
    const { main, mayStart } = menuFor(as(held));
    expect(main.length).toBeLessThanOrEqual(held.also.length === 0 ? 4 : 5);
    expect(main[0]?.href).toBe("/");
    expect(mayStart).toBe(true);
  });

  it.each(everySet)("$role, $also: have the desk of each role in sight, the leading one's first", (held) => {
    const second = (one: HeldRoles): string => menuFor(as(one)).main[1]?.name ?? "none";
    const inSight = menuFor(as(held)).main.map(({ name }) => name);
    expect(inSight.slice(1, 2 + held.also.length)).toEqual(singles(held).map(second));
  });

  it.each(everySet)("$role, $also: lead to the desks of them all, where there are several", (held) => {
    const desks = desksFor(as(held));
    expect(desks).toHaveLength(held.also.length === 0 ? 0 : 1 + held.also.length);
    const hrefs = all(held).map(({ href }) => href);
    for (const { href } of desks)
      expect(hrefs.includes(href) || href === "/students/p1", `${href} is open`).toBe(true);
  });
});
