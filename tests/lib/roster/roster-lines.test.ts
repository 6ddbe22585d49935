import { beforeAll, describe, expect, it } from "vitest";
import type { Db } from "@/lib/db";
import { addRoster, createGroup, getGroup } from "@/lib/roster";
import { rosterLines } from "@/lib/roster/roster-lines";
import type { Pen } from "@/lib/store";
import { useFreshDb } from "../../setup/fresh-db";

describe("a pasted list", () => {
  it.each([
    ["Imke Tal\tW-07", [{ name: "Imke Tal", mark: "W-07" }]],
    ["W-07; Imke Tal", [{ name: "Imke Tal", mark: "W-07" }]],
    [
      "Imke Tal\r\n\r\n  Joss Lund , W-08 ",
      [
        { name: "Imke Tal", mark: null },
        { name: "Joss Lund", mark: "W-08" },
      ],
    ],
    ['Name;Identification\n"Imke Tal";"W-07"', [{ name: "Imke Tal", mark: "W-07" }]],
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
});
