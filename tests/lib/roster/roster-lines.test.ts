import { beforeAll, describe, expect, it } from "vitest";
import type { Db } from "@/lib/db";
import { mayGive, ownerHere, roleNames, roles, rolesWith, type Actor } from "@/lib/people";
import { addRoster, createGroup, getGroup, listPeople } from "@/lib/roster";
import { rosterLines } from "@/lib/roster/roster-lines";
import type { Pen } from "@/lib/store";
import { useFreshDb } from "../../setup/fresh-db";

describe("a pasted list", () => {
  it.each([
    ["Imke Tal\tW-07", [{ name: "Imke Tal", mark: "W-07", roles: [] }]],
    ["W-07; Imke Tal", [{ name: "Imke Tal", mark: "W-07", roles: [] }]],
    [
      "Imke Tal\r\n\r\n  Joss Lund , W-08 ",
      [
        { name: "Imke Tal", mark: null, roles: [] },
        { name: "Joss Lund", mark: "W-08", roles: [] },
      ],
    ],
    ['Name;Identification\n"Imke Tal";"W-07"', [{ name: "Imke Tal", mark: "W-07", roles: [] }]],
    [" \n ", []],
  ])("%j", (text, lines) => {
    expect(rosterLines(text)).toEqual(lines);
  });
});

const fresh = useFreshDb();
let db: Db;
let pen: Pen;
beforeAll(() => {
  ({ db, pen } = fresh());
});

describe("the roles on a pasted line", () => {
  const both = { name: "Imke Tal", mark: "W-07", roles: ["instructor", "inspector"] };
  it.each([
    "Imke Tal; W-07; Instructor + Inspector",
    "Imke Tal; W-07; instructor; inspector",
    "W-07, Imke Tal, instructor+inspector+instructor",
    "Imke Tal\tW-07\tinstructor; inspector",
    "Imke Tal; instructor + inspector; W-07",
    '"Imke Tal"\t"W-07"\t"Instructor, Inspector"',
  ])("%j", (line) => {
    expect(rosterLines(line)).toEqual([both]);
  });

  it("are the first that is named, and whatever else, by each name that a role has", () => {
    for (const role of roles)
      expect(rosterLines(`Imke Tal; W-07; ${roleNames[role]}`)).toEqual([
        { name: "Imke Tal", mark: "W-07", roles: [role] },
      ]);
    expect(rosterLines("Imke Tal; inspector")).toEqual([
      { name: "Imke Tal", mark: null, roles: ["inspector"] },
    ]);
    expect(rosterLines("Imke Tal; student")[0]?.roles).toEqual(["welder"]);
  });

  it("are not understood where a word beside one is none, and no roles where no word is one", () => {
    expect(rosterLines("Imke Tal; W-07; instructor + inspecter")[0]?.roles).toBeNull();
    expect(rosterLines("Imke Tal; W-07; evening class")[0]?.roles).toEqual([]);
  });

  it("take nobody's name from them", () => {
    expect(rosterLines("W-07; Welder")).toEqual([{ name: "Welder", mark: "W-07", roles: [] }]);
    expect(rosterLines("Inspector")).toEqual([{ name: "Inspector", mark: null, roles: [] }]);
  });
});

describe("a pasted list into a group", () => {
  it("is added whole or not at all, and a second time only those who came later", async () => {
    const made = await createGroup(pen, "Bay 3");
    if (!made.ok) throw new Error("no group");
    const { id } = made.value;
    const names = async () => (await getGroup(db, id))?.members.map(({ name, mark }) => [name, mark]);
    expect(await addRoster(pen, id, "Imke Tal; W-07\nJoss Lund; W-08")).toMatchObject({
      value: { added: 2 },
    });
    expect(await addRoster(pen, id, "imke tal; W-07\nKaj Rem; W-09")).toMatchObject({ value: { added: 1 } });
    const refused = await addRoster(pen, id, "Lene Vik; W-10\nMats Ro; w-07");
    expect(refused).toMatchObject({ ok: false, issues: [{ code: "mark-taken" }] });
    expect(await addRoster(pen, id, "\n")).toMatchObject({
      ok: false,
      issues: [{ code: "roster-not-understood" }],
    });
    expect(await names()).toEqual([
      ["Imke Tal", "W-07"],
      ["Joss Lund", "W-08"],
      ["Kaj Rem", "W-09"],
    ]);
  });

  it("gives roles where whoever pastes may, and is refused whole where they may not", async () => {
    const made = await createGroup(pen, "Bay 4");
    if (!made.ok) throw new Error("no group");
    const { id } = made.value;
    const list = "Orla Brandt; I-10; instructor + inspector\nPer Sund; W-30";
    const given = (actor: Actor) => (role: (typeof roles)[number]) => mayGive(actor, role);
    for (const held of [rolesWith("instructor", []), rolesWith("instructor", ["inspector", "welder"])]) {
      const actor: Actor = { kind: "person", personId: "me", ...held, scopes: null };
      expect(await addRoster(pen, id, list, given(actor))).toMatchObject({
        issues: [{ code: "roster-roles", data: { name: "Orla Brandt" } }],
      });
      expect(await addRoster(pen, id, "Per Sund; W-29; welder", given(actor))).toMatchObject({ ok: true });
      await db.person.deleteMany({ where: { mark: "W-29" } });
    }
    expect(await addRoster(pen, id, list)).toMatchObject({ ok: false });
    expect(await addRoster(pen, id, "Orla; I-10; instructor + nobody", given(ownerHere))).toMatchObject({
      issues: [{ code: "roster-not-understood" }],
    });
    expect((await getGroup(db, id))?.members).toEqual([]);
    expect(await addRoster(pen, id, list, given(ownerHere))).toMatchObject({ value: { added: 2 } });
    const people = (await listPeople(db)).filter(({ mark }) => mark === "I-10" || mark === "W-30");
    expect(people.map(({ role, also }) => [role, also])).toEqual([
      ["instructor", ["inspector"]],
      ["welder", []],
    ]);
  });
});
