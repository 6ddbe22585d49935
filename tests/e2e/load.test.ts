import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inDepth } from "../setup/in-depth";
import { kinds } from "../load/one-bead";
import { load, loadGround, percentile, type LoadGround } from "../load/people";

/** The short version of `npm run load`: some seconds, half a minute in the deep run. */
const PEOPLE = inDepth(2, 5);

let ground: LoadGround;
beforeAll(async () => {
  ground = await loadGround(PEOPLE);
});
afterAll(() => ground?.stop());

describe(`${PEOPLE} people at once`, () => {
  it("are all served, and the server's memory is bounded", async () => {
    const { timed, minutes } = await load(ground, { minutes: inDepth(0.08, 0.5), paceMs: 500, least: 1 });
    for (const kind of kinds) {
      expect(timed[kind].failed, kind).toEqual([]);
      expect(timed[kind].times.length, kind).toBeGreaterThanOrEqual(PEOPLE);
    }
    console.log(`p95, ms: ${kinds.map((kind) => `${kind} ${percentile(timed[kind].times, 95)}`).join(", ")}`);
    expect(Math.max(...minutes)).toBeLessThan(2 * 2 ** 30);
  });
});
