import { beforeAll, describe, expect, it } from "vitest";
import { emptyExercise } from "@/lib/course";
import { createBead } from "@/lib/beads";
import { addPhrase, createExercise } from "@/lib/classroom";
import { placesOfName, removePerson } from "@/lib/roster";
import { nameFinder } from "@/lib/roster/name-places";
import { useFreshDb } from "../../setup/fresh-db";
import { fillWholeRecord, type WholeRecord } from "../../setup/whole-record";

const fresh = useFreshDb();
let whole: WholeRecord;
beforeAll(async () => {
  whole = await fillWholeRecord(fresh());
});

describe("a name in free texts", () => {
  it.each([
    ["Marit Oddny", "Run by Marit on Monday", true],
    ["Marit Oddny", "oddny's second try", true],
    ["Marit Oddny", "Maritime steel", false],
    ["Åse Ø. Berg-Lund", "for åse", true],
    ["Åse Ø. Berg-Lund", "Bergen", false],
    ["Åse Ø. Berg-Lund", "as ase did", true],
    ["Ase Lund", "Åse's first", true],
    ["Jo", "Jo was here", true],
    ["Jo", "Joint prepared", false],
    ["Bo Li", "run by bo  li", true],
    ["Bo Li", "Li-ion grinder, Bo", false],
    ["...", "anything", null],
    ["A.(b)* Vale", "vale", true],
  ])("%s in %j: %s", (name, text, found) => {
    expect(nameFinder(name)?.(text) ?? null).toBe(found);
  });

  it("is listed where the removal leaves it, and only there", async () => {
    const { db, pen } = fresh();
    expect(await placesOfName(db, whole.studentId)).toEqual([]);
    await createBead(pen, { title: "Marit's lap", welder: "M. Oddny" });
    await addPhrase(pen, "As Marit did it.", null);
    await createExercise(pen, whole.groupId, {
      title: "Lap",
      content: { ...emptyExercise, aim: "As even as Oddny's" },
      open: false,
      withoutAccount: false,
      dueAt: null,
    });
    const places = await placesOfName(db, whole.studentId);
    expect(places.map(({ subject, path }) => [subject.split(":")[0], path.join(".")]).sort()).toEqual([
      ["bead", "title"],
      ["bead", "welder"],
      ["exercise", "content.aim"],
      ["phrase", "text"],
    ]);
    expect(places.every(({ frozen }) => !frozen)).toBe(true);
  });

  it("is nowhere to look for once the person is gone", async () => {
    const { db, pen } = fresh();
    await removePerson(pen, whole.studentId, new Date());
    expect(await placesOfName(db, whole.studentId)).toEqual([]);
  });
});
