import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  deeds,
  may,
  mayGive,
  nobody,
  ownerHere,
  reach,
  roleFor,
  roles,
  scopeOfDeed,
  scopes,
  signs,
  type Actor,
  type HeldRoles,
  type Role,
  type Scope,
  type Thing,
} from "@/lib/people";
import { rights } from "@/lib/people/deeds";
import { everySet, singles } from "./every-set";

const person = (role: Role, personId = "me"): Actor => ({
  kind: "person",
  personId,
  role,
  also: [],
  scopes: null,
});
const arbRole = fc.constantFrom(...roles);
const arbDeed = fc.constantFrom(...deeds);

describe("who may what", () => {
  it("nobody may anything", () => {
    for (const deed of deeds) expect(may(nobody, deed)).toBe(false);
  });

  it("only an inspector signs: not the owner, not at their own machine, not with any token", () => {
    expect(roles.filter((role) => may(person(role), "record.sign"))).toEqual(["inspector"]);
    expect(may(ownerHere, "record.sign")).toBe(false);
    for (const role of roles)
      expect(
        may({ kind: "person", personId: "me", role, also: [], scopes: [...scopes] }, "record.sign"),
      ).toBe(false);
  });

  it("a student reaches only their own, and nobody's thing is not theirs", () => {
    for (const deed of deeds) {
      expect(may(person("welder"), deed, { personId: "other" })).toBe(false);
      expect(may(person("welder"), deed, { personId: null })).toBe(false);
      expect(reach(person("welder"), deed)).not.toBe("all");
    }
    expect(may(person("welder"), "bead.read", { personId: "me" })).toBe(true);
  });

  it("an instructor sees no jobs and no log, an inspector no course", () => {
    for (const deed of ["job.read", "record.read", "log.read", "people.manage"] as const)
      expect(may(person("instructor"), deed)).toBe(false);
    for (const deed of ["course.read", "feedback.read", "feedback.write", "people.manage"] as const)
      expect(may(person("inspector"), deed)).toBe(false);
  });

  it("a token never reaches further than its person, and only where its scope says so", () => {
    fc.assert(
      fc.property(arbRole, arbDeed, fc.subarray([...scopes]), (role, deed, given) => {
        const token: Actor = { kind: "person", personId: "me", role, also: [], scopes: given };
        const scope = scopeOfDeed[deed];
        const expected = scope !== undefined && given.includes(scope) ? (rights[role][deed] ?? null) : null;
        expect(reach(token, deed)).toBe(expected);
      }),
    );
  });

  it("the holder of a hand-in's address reaches that bead alone", () => {
    const holder: Actor = { kind: "hand-in", handInId: "h", beadId: "b" };
    expect(deeds.filter((deed) => may(holder, deed, { personId: null, beadId: "b" }))).toEqual([
      "bead.read",
      "feedback.read",
      "feedback.reply",
    ]);
    for (const deed of deeds) expect(may(holder, deed, { personId: null, beadId: "other" })).toBe(false);
  });
});

describe("somebody with several roles", () => {
  const as = (held: HeldRoles, given: readonly Scope[] | null = null): Actor => ({
    kind: "person",
    personId: "me",
    ...held,
    scopes: given,
  });
  const tokens: readonly (readonly Scope[] | null)[] = [null, [], ...scopes.map((one) => [one]), scopes];
  const things: readonly (Thing | undefined)[] = [
    undefined,
    { personId: "me" },
    { personId: "other" },
    { personId: null },
  ];

  it.each(everySet)("$role, $also: may what any of the roles may alone, and nothing else", (held) => {
    for (const given of tokens)
      for (const deed of deeds)
        for (const thing of things)
          expect(
            may(as(held, given), deed, thing),
            `${deed} to ${thing?.personId}, token ${given?.join(" ")}`,
          ).toBe(singles(held).some((one) => may(as(one, given), deed, thing)));
  });

  it.each(everySet)("$role, $also: gives the roles that one of theirs gives alone", (held) => {
    for (const role of roles)
      expect(mayGive(as(held), role)).toBe(singles(held).some((one) => mayGive(as(one), role)));
  });

  it("gives all of them as owner, and as instructor students alone, as it was with one role", () => {
    const given = (actor: Actor) => roles.filter((role) => mayGive(actor, role));
    expect(given(person("owner"))).toEqual([...roles]);
    expect(given(ownerHere)).toEqual([...roles]);
    expect(given(person("instructor"))).toEqual(["welder"]);
    for (const none of [person("inspector"), person("welder"), nobody]) expect(given(none)).toEqual([]);
    // A token gives nobody anything.
    for (const held of everySet)
      expect(given(as(held, scopes)).filter((role) => role !== "welder")).toEqual([]);
  });

  it.each(everySet)("$role, $also: signs where one of them is an inspector's", (held) => {
    expect(signs(held)).toBe(singles(held).some(({ role }) => role === "inspector"));
  });

  it.each(everySet)("$role, $also: does a deed in a role that alone reaches as far", (held) => {
    for (const deed of deeds) {
      const role = roleFor(held, deed);
      if (role === null) expect(reach(as(held), deed)).toBeNull();
      else {
        expect([held.role, ...held.also]).toContain(role);
        expect(rights[role][deed]).toBe(reach(as(held), deed));
      }
    }
    // The leading one where it may: nobody writes limits as a welder.
    expect(roleFor(held, "criteria.write")).toBe(
      [held.role, ...held.also].find((one) => one !== "welder") ?? null,
    );
  });
});
