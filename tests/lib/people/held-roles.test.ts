import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heldRoleNames, heldRoles, holds, readRoles, roleColumns, roles, rolesWith } from "@/lib/people";
import { everySet } from "./every-set";

describe("the roles of a person", () => {
  it("are 32 sets: each role leads each choice of the others", () => {
    expect(new Set(everySet.map((held) => heldRoles(held).join(" "))).size).toBe(32);
  });

  it.each(everySet)("$role, $also: come back out of their columns, and each is held", (held) => {
    expect(readRoles(roleColumns(held))).toEqual(held);
    expect(roles.filter((role) => holds(held, role)).toSorted()).toEqual([...heldRoles(held)].toSorted());
    expect(heldRoles(held)[0]).toBe(held.role);
  });

  it("fill the second column only where there are several, so that one role stays as it was stored", () => {
    for (const held of everySet) expect(roleColumns(held).also === null).toBe(held.also.length === 0);
  });

  it("are the same in whatever order and however often they were named", () => {
    const role = fc.constantFrom(...roles);
    fc.assert(
      fc.property(role, fc.array(role, { maxLength: 8 }), (leads, others) => {
        const held = rolesWith(leads, others);
        expect(rolesWith(leads, others.toReversed())).toEqual(held);
        expect(rolesWith(leads, [...others, leads])).toEqual(held);
        expect(new Set(heldRoles(held))).toEqual(new Set([leads, ...others]));
        expect(heldRoles(held)).toHaveLength(new Set([leads, ...others]).size);
      }),
      { seed: 7 },
    );
  });

  it("that this version does not know give nothing; without a known leading one there is nobody", () => {
    expect(readRoles({ role: "inspector", also: "auditor welder" })).toEqual(
      rolesWith("inspector", ["welder"]),
    );
    expect(readRoles({ role: "welder", also: "coowner owners" })).toEqual(rolesWith("welder", []));
    expect(readRoles({ role: "auditor", also: "owner" })).toBeNull();
    expect(readRoles({ role: "welder", also: "" })).toEqual(rolesWith("welder", []));
  });

  it("have names of which none stands in another: the database looks for a part of the column", () => {
    for (const one of roles)
      for (const other of roles) expect(other.includes(one), `${one} in ${other}`).toBe(one === other);
  });

  it("are said with the leading one first", () => {
    expect(heldRoleNames(rolesWith("inspector", ["welder", "instructor"]))).toBe(
      "Inspector, instructor, student or welder",
    );
  });
});

describe("whoever asks for a role", () => {
  const root = path.join(import.meta.dirname, "../../..");
  const files = ["lib", "app", "components"].flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: "utf8" })
      .filter((name) => /\.(ts|tsx|mjs)$/.test(name))
      .map((name) => path.posix.join(folder, name)),
  );
  const names = roles.join("|");
  /** A role compared with one by name, or looked for in its column alone. */
  const alone = new RegExp(
    `role"?\\s*(===|!==|=)\\s*["'](${names})["']|where:[^;]*\\brole:\\s*"(${names})"`,
    "g",
  );
  const asked = (text: string): number => text.match(alone)?.length ?? 0;

  it("asks what is held: the leading one alone is asked for only where it is meant", () => {
    const found = files.flatMap((file) => {
      const count = asked(readFileSync(path.join(root, file), "utf8"));
      return count === 0 ? [] : [[file, count] as const];
    });
    expect(Object.fromEntries(found)).toEqual({
      // Beads begun are one's own where welding leads.
      "app/_door/here.ts": 1,
      // The desk of one role, for each that is held.
      "app/_door/menu.ts": 1,
      // The gift of one role; nobody is named one: a student.
      "lib/people/may.ts": 1,
      "lib/roster/groups.ts": 2,
      // Holds the other column beside it.
      "lib/cli/count-owners.mjs": 1,
    });
  });

  it("would be found doing so", () => {
    for (const text of [
      'if (person?.role !== "inspector") return',
      'db.person.findMany({ where: { removedAt: null, role: "owner" } })',
      `WHERE "role" = 'owner'`,
    ])
      expect(asked(text), text).toBe(1);
  });
});
