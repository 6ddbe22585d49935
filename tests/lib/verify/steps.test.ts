import { writeFileSync, chmodSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { beforeAll, describe, expect, it } from "vitest";
import { viewPath } from "@/lib/photo/paths";
import { verifyRecords, walkParts, walkRecords, type Verification, type WalkStep } from "@/lib/verify";
import { growShop } from "@/lib/demo/grow-shop";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";
import { storePlainPhotos } from "../../setup/plain-photos";
import { fillWholeRecord } from "../../setup/whole-record";

const fresh = useFreshDb();
let sound: Gone;
let whole: Gone;

interface Gone {
  readonly steps: readonly WalkStep[];
  readonly answer: Verification | undefined;
}

/** Goes so many steps and stops; with none said, to the end. */
async function go(most = Infinity): Promise<Gone> {
  const walk = walkRecords(fresh().db, fresh().folder);
  const steps: WalkStep[] = [];
  for (;;) {
    const { value, done } = steps.length < most ? await walk.next() : await walk.return(undefined as never);
    if (done) return { steps, answer: value };
    steps.push(value);
  }
}

const foundIn = ({ steps }: Gone) => steps.flatMap(({ findings }) => findings);
const said = ({ answer }: Gone) => [...(answer?.remarks ?? []), ...(answer?.findings ?? [])];

/** One thing for each part that finds something: what every record holds, a photo, a text, a signature, a derived row. */
function damage(folder: string, sha256: string): void {
  const file = new Database(path.join(folder, "toeline.db"));
  file.pragma("foreign_keys = OFF");
  const triggers = file.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").all();
  for (const { name } of triggers as { name: string }[]) file.exec(`DROP TRIGGER "${name}"`);
  file.exec(`UPDATE LogEntry SET by = 'somebody' WHERE seq IN (3, 7);
    UPDATE LogEntry SET at = '2001-01-01T00:00:00.000Z' WHERE seq = 9;
    UPDATE Bead SET title = title || '!';
    INSERT INTO "Group" (id, name) VALUES ('put-in', 'Nobody made it');
    UPDATE SignedRevision SET content = content || ' ';
    UPDATE KeySignature SET headHash = '${"0".repeat(64)}' WHERE headHash IS NOT NULL;
    UPDATE BeadFacts SET marks = marks + 1;`);
  file.close();
  const view = viewPath(folder, sha256, "view")!;
  chmodSync(view, 0o644);
  writeFileSync(view, "no picture");
}

beforeAll(async () => {
  const { pen, folder } = fresh();
  const { sha256 } = await fillWholeRecord(fresh());
  const photos = await storePlainPhotos(pen.db, folder);
  await growShop(pen, { beads: 90, seed: 1, until: new Date("2026-11-26T12:00:00Z"), photos });
  sound = await go();
  damage(folder, sha256);
  whole = await go();
});

describe("a walk through the records", () => {
  it("finds nothing where nothing was done, and something in nearly every part where it was", () => {
    expect(said(sound)).toEqual([]);
    const parts = new Set(whole.steps.filter(({ findings }) => findings.length > 0).map(({ part }) => part));
    expect([...parts]).toEqual(walkParts.filter((part) => part !== "keys" && part !== "rows"));
    expect(whole.steps.length).toBeGreaterThan(20);
  });

  it("goes through every part in its order, never back, and ends each at as many as there are", () => {
    for (const { steps } of [sound, whole]) {
      const order = steps.map(({ part }) => walkParts.indexOf(part));
      expect(order).toEqual(order.toSorted((a, b) => a - b));
      expect(new Set(order).size).toBe(walkParts.length);
      for (const [i, one] of steps.entries()) {
        const before = steps[i - 1];
        expect(one.looked).toBeLessThanOrEqual(one.of);
        if (before?.part === one.part) expect(one.looked).toBeGreaterThanOrEqual(before.looked);
        if (steps[i + 1]?.part !== one.part) expect(one.looked, one.part).toBe(one.of);
      }
    }
    // In a part of several steps it is told on the way as well.
    const records = whole.steps.filter(({ part }) => part === "records");
    expect(new Set(records.map(({ looked }) => looked)).size).toBeGreaterThan(1);
    expect(records[0]!.looked).toBeLessThan(records[0]!.of);
  });

  it("counts before it begins what it then looks at", () => {
    const last = (part: string) => sound.steps.findLast((one) => one.part === part)!;
    for (const one of sound.steps) expect(one.of, one.part).toBe(last(one.part).of);
    expect(last("log").of).toBe(sound.answer?.entries);
    expect(last("unlogged records").of).toBe(sound.answer?.subjects);
    expect(last("photos").of).toBe(sound.answer?.photos);
    expect(last("frozen texts").of).toBe(sound.answer?.frozen);
    expect(last("signatures").of).toBe(sound.answer?.signatures);
    expect(last("lists and figures").of).toBe(sound.answer?.derived);
  });

  it("says on the way what it says at the end", () => {
    expect(said(whole).length).toBeGreaterThan(90);
    expect(foundIn(whole).filter(({ code }) => code !== "time-runs-back")).toEqual(whole.answer?.findings);
    expect(foundIn(whole).filter(({ code }) => code === "time-runs-back")).toEqual(whole.answer?.remarks);
  });

  it("stopped after any step has no answer, and found the beginning of what the whole one finds", async () => {
    const all = foundIn(whole);
    for (let most = 0; most < whole.steps.length; most += inDepth(4, 1)) {
      const gone = await go(most);
      expect(gone.answer, `after ${most} steps`).toBeUndefined();
      expect(gone.steps.length).toBe(most);
      const found = foundIn(gone);
      expect(found).toEqual(all.slice(0, found.length));
    }
  });

  it("that somebody waits for is stopped at any step, and never answers then", async () => {
    let steps = 0;
    await verifyRecords(fresh().db, fresh().folder, { watch: { onProgress: () => (steps += 1) } });
    expect(steps).toBe(whole.steps.length);
    for (const at of inDepth([2, steps], [1, 2, steps >> 1, steps - 1, steps])) {
      const stop = new AbortController();
      let gone = 0;
      const onProgress = () => (gone += 1) === at && stop.abort(new Error("stopped"));
      const watch = { onProgress, signal: stop.signal };
      await expect(verifyRecords(fresh().db, fresh().folder, { watch })).rejects.toThrow("stopped");
      expect(gone).toBe(at);
    }
  });
});
