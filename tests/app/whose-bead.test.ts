import { describe, expect, it, vi } from "vitest";
import { welderOf, type Here } from "@/app/_door/here";
import { signedInStudent } from "@/app/hand-in/signed-in";
import { holds, may, nobody, ownerHere, type Actor } from "@/lib/people";
import { everySet } from "../lib/people/every-set";

vi.mock("next/headers", () => ({ headers: async () => new Headers() }));

const hereAs = (actor: Actor): Here => ({ actor, may: (deed, thing) => may(actor, deed, thing) }) as Here;
const actors = everySet.map((held) => ({ kind: "person", personId: "me", ...held, scopes: null }) as const);

describe("whose bead it is", () => {
  it.each(actors)("begun by $role, $also: their own where welding leads, else whoever's welds", (actor) => {
    expect(welderOf(actor)).toBe(actor.role === "welder" ? "me" : null);
  });

  it.each(actors)(
    "handed in by $role, $also: their own, unless one of the roles hands in for others",
    (actor) => {
      const forOthers = holds(actor, "owner") || holds(actor, "instructor");
      const { by, signedInAs } = signedInStudent(hereAs(actor));
      expect(signedInAs).toBe(holds(actor, "welder") && !forOthers ? "me" : null);
      expect(by).toBe(holds(actor, "welder") || forOthers ? "person:me" : null);
    },
  );

  it("is nobody's known without an account", () => {
    expect(welderOf(ownerHere)).toBeNull();
    expect(signedInStudent(hereAs(nobody))).toEqual({ by: null, signedInAs: null });
    expect(signedInStudent(hereAs(ownerHere))).toEqual({ by: "owner", signedInAs: null });
  });
});
