import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inDepth } from "../setup/in-depth";
import { allDeeds } from "./deeds";
import { cutOffAtRandom, cutOffGround } from "./cut-off";
import { killAtRandom, killGround, type KillGround } from "./kills";

let work = "";
let ground: KillGround;
beforeAll(async () => {
  work = mkdtempSync(path.join(tmpdir(), "toeline-kills-"));
  ground = await killGround(work, KILL_EVERY);
});
afterAll(() => rmSync(work, { recursive: true, force: true }));

const SEED = 20261126;
const KILL_EVERY = 11;

describe("a process that is killed while it writes", () => {
  it("has lost nothing it acknowledged, and left nothing half", async () => {
    const moments = inDepth(12, 220);
    const counts = await killAtRandom(ground, { seed: SEED, moments, killEvery: KILL_EVERY });
    console.log(`kills, seed ${SEED}: ${JSON.stringify({ ...counts, wrong: counts.wrong.length })}`);
    expect(counts.wrong).toEqual([]);
    // Every deed was under way at a moment; in the few of the ordinary run one may just have ended.
    const met = allDeeds.filter((deed) => counts.during[deed] !== undefined);
    expect(met.length).toBeGreaterThanOrEqual(inDepth(3, allDeeds.length));
    expect(counts.kills + counts.frozen).toBe(moments);
    expect(counts.acknowledged).toBeGreaterThan(moments / 2);
  });

  // Faults put in on purpose, each until it is found.
  it.each(inDepth([], ["row-before-file", "told-too-early", "by-halves"]))(
    "is found out where it does wrong: %s",
    async (fault) => {
      const asked = { seed: SEED, moments: 200, killEvery: KILL_EVERY, fault, untilWrong: true };
      expect((await killAtRandom(ground, asked)).wrong).not.toEqual([]);
    },
  );
});

// Each moment opens a whole folder of before: too dear for the ordinary run, which has one such cut in broken-folder. With
// those above three hundred moments in the long run, twelve in the ordinary one.
describe.runIf(inDepth(false, true))("a folder that is brought up to date, or back from a backup", () => {
  it("has lost nothing, wherever it was killed, and the same done again goes through", async () => {
    const cuts = await cutOffGround(work);
    for (const deed of ["migrate", "restore"] as const) {
      expect(await cutOffAtRandom(cuts, { deed, seed: SEED, moments: 40 })).toEqual([]);
      const fault = { deed, seed: SEED, moments: 60, fault: "in-place" };
      expect(await cutOffAtRandom(cuts, fault), deed).not.toEqual([]);
    }
  });
});
