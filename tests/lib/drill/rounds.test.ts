import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { Db } from "@/lib/db";
import {
  answerBead,
  drawnBeads,
  drawnPicture,
  getRound,
  listRounds,
  readDrawn,
  startRound,
  startSameRound,
} from "@/lib/drill";
import type { Pen } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { drawnBead, fault } from "../eye/eye";

const fresh = useFreshDb();
let db: Db;
let pen: Pen;
let folder: string;
const now = new Date("2026-11-26T10:00:00Z");

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const codes = (result: { ok: boolean; issues?: readonly { code: string }[] }) =>
  (result.issues ?? []).map(({ code }) => code);

beforeAll(() => {
  ({ db, pen, folder } = fresh());
  mkdirSync(path.join(folder, "eye"), { recursive: true });
  for (let i = 0; i < 9; i += 1) {
    const bead = drawnBead([fault("undercut", 200, 200)], { id: `plain-${i}` });
    writeFileSync(path.join(folder, "eye", `plain-${i}.json`), JSON.stringify(bead));
    writeFileSync(path.join(folder, "eye", `plain-${i}.jpg`), "picture");
  }
  writeFileSync(path.join(folder, "eye", "plain-torn.json"), "{}");
});

describe("rounds of the training of the eye", () => {
  it("take beads not seen before, go in order, are scored at the end and never changed", async () => {
    const drawn = (await drawnBeads(folder, "plain")).filter((id) => id !== "plain-torn");
    expect(drawn).toHaveLength(9);
    const asked = { look: "plain", level: "iso-5817-c", drawn } as const;
    expect(codes(await startRound(pen, "p1", { ...asked, drawn: drawn.slice(0, 5) }, now))).toEqual([
      "eye-too-few",
    ]);
    const first = value(await startRound(pen, "p1", asked, now));
    const beads = await readDrawn(folder, drawn);
    const { round, setKey } = (await getRound(db, first.id))!;
    const marks = [{ at: { x: 200, y: 200 }, kind: "undercut", sizeMm: 10 }];
    const answer = (beadId: string) => answerBead(pen, first.id, { beadId, marks, fails: true }, beads, now);
    expect(codes(await answer(round.beadIds[1]!))).toEqual(["eye-answered"]);
    for (const [i, beadId] of round.beadIds.entries())
      expect(value(await answer(beadId))).toEqual({ finished: i === round.beadIds.length - 1 });
    expect(codes(await answer(round.beadIds[0]!))).toEqual(["eye-answered"]);
    const over = (await getRound(db, first.id))!;
    expect(over.finishedAt).toBe("2026-11-26T10:00:00.000Z");
    expect(over.round.scored?.map(({ found, fails }) => [found, fails])).toEqual(
      round.beadIds.map(() => [["undercut"], true]),
    );
    // Three are left that this person has not seen; all three are among the next six.
    const second = (await getRound(db, value(await startRound(pen, "p1", asked, now)).id))!;
    const unseen = drawn.filter((id) => !round.beadIds.includes(id));
    expect(second.round.beadIds).toEqual(expect.arrayContaining(unseen));
    const same = (await getRound(
      db,
      value(await startSameRound(pen, "p2", setKey, new Date("2026-11-26T11:00:00Z"))).id,
    ))!;
    expect(same).toMatchObject({
      setKey,
      personId: "p2",
      round: { beadIds: round.beadIds, answers: [], scored: null },
    });
    expect((await listRounds(db, { setKey })).map(({ personId }) => personId)).toEqual(["p1", "p2"]);
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
  });

  it("reads no file but its own, and leaves out what is torn", async () => {
    expect(await readDrawn(folder, ["plain-torn", "plain-1", "../toeline"])).toHaveLength(1);
    expect(await drawnPicture(folder, "plain-1")).not.toBeNull();
    for (const id of ["../toeline.db", "plain-1.json", "plain-", "none-1"])
      expect(await drawnPicture(folder, id), id).toBeNull();
  });
});
