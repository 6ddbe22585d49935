import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  deeds,
  may,
  nobody,
  ownerHere,
  reach,
  roles,
  scopeOfDeed,
  scopes,
  type Actor,
  type Role,
} from "@/lib/people";
import { rights } from "@/lib/people/deeds";

const person = (role: Role, personId = "me"): Actor => ({ kind: "person", personId, role, scopes: null });
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
      expect(may({ kind: "person", personId: "me", role, scopes: [...scopes] }, "record.sign")).toBe(false);
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
        const token: Actor = { kind: "person", personId: "me", role, scopes: given };
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
