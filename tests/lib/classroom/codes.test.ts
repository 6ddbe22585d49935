import { beforeAll, describe, expect, it } from "vitest";
import { emptyExercise } from "@/lib/course";
import {
  createExercise,
  getExercise,
  handInBySecret,
  handInPhoto,
  renewCode,
  takingExercise,
} from "@/lib/classroom";
import { addStudent, createGroup, setAccount } from "@/lib/roster";
import { sha256Text } from "@/lib/store";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
let exerciseId = "";
const students: Record<string, string> = {};

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

beforeAll(async () => {
  const { pen } = fresh();
  const groupId = value(await createGroup(pen, "Bay 3")).id;
  for (const [name, mark] of [
    ["Marit Óddny", "W-07"],
    ["Bo Li", "W-08"],
    ["Bo Li", "W-09"],
    ["Ines Roh", "W-10"],
  ] as const)
    students[mark] = value(await addStudent(pen, groupId, { name, mark })).id;
  value(await setAccount(pen, students["W-10"]!, "an-account"));
  const content = { title: "Lap", content: { ...emptyExercise, joint: "lap" }, open: true };
  const made = await createExercise(pen, groupId, { ...content, withoutAccount: true, dueAt: null });
  exerciseId = value(made).id;
});

let photos = 0;
/** Hands in as somebody who is not signed in and typed this name; whose bead it became. */
async function handInAs(typed: string, code: string) {
  const sha256 = sha256Text(`photo ${(photos += 1)}`);
  const photo = { sha256, format: "jpeg" as const, bytes: 1, widthPx: 10, heightPx: 10, views: [] };
  const run = { wireFeedMPerMin: null, volts: null, ctwdMm: null, polarity: null };
  const form = { personId: null, givenName: typed, note: null, run };
  const made = await handInPhoto(fresh().db, code, form, photo as never, { by: null, signedInAs: null });
  if (!made.ok) return made.issues[0]!.code;
  const row = await fresh().db.handIn.findUnique({ where: { id: made.value.handInId } });
  return { personId: row?.personId ?? null, givenName: row?.givenName ?? null, secret: made.value.secret };
}
const codeNow = async () => (await getExercise(fresh().db, exerciseId))!.code;

describe("a hand-in by somebody who is not signed in", () => {
  it("finds the student of the group by the typed name or identification", async () => {
    for (const typed of ["marit oddny", " Marit  Óddny", "w-07"])
      expect(await handInAs(typed, await codeNow())).toMatchObject({ personId: students["W-07"] });
    expect(await handInAs("W-09", await codeNow())).toMatchObject({ personId: students["W-09"] });
  });

  it("guesses at nobody: a name that two have, or that none has, is kept as it was typed", async () => {
    for (const typed of ["Bo Li", "Bo", "Somebody Else"])
      expect(await handInAs(typed, await codeNow())).toMatchObject({ personId: null, givenName: typed });
  });

  it("never hands in under the name of a student who has an account", async () => {
    expect(await handInAs("Ines Roh", await codeNow())).toMatchObject({
      personId: null,
      givenName: "Ines Roh",
    });
  });
});

describe("a hand-in code", () => {
  it("runs out after some weeks, and a new one ends it at once; addresses given before stay good", async () => {
    const { db, pen } = fresh();
    const code = await codeNow();
    const days = (count: number) => new Date(Date.now() + count * 24 * 3_600_000);
    expect((await takingExercise(db, code, false, days(29))).ok).toBe(true);
    expect(await takingExercise(db, code, false, days(31))).toMatchObject({
      issues: [{ code: "hand-in-code-old" }],
    });
    const given = await handInAs("W-08", code);
    value(await renewCode(pen, exerciseId, days(31)));
    const next = await codeNow();
    expect(next).not.toBe(code);
    expect(await takingExercise(db, code, false, days(31))).toMatchObject({
      issues: [{ code: "hand-in-code-unknown" }],
    });
    expect((await takingExercise(db, next, false, days(60))).ok).toBe(true);
    if (typeof given === "string") throw new Error(given);
    expect((await handInBySecret(db, code, given.secret))?.personId).toBe(students["W-08"]);
    expect((await renewCode(pen, "not-there", days(1))).ok).toBe(false);
  });
});
