import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { kinds, load, loadGround, percentile, type LoadGround } from "../load/people";

let ground: LoadGround;
beforeAll(async () => {
  ground = await loadGround(5);
});
afterAll(() => ground?.stop());

describe("five people at once", () => {
  it("are all served, and the server's memory is bounded", async () => {
    const { timed, minutes } = await load(ground, { minutes: 0.2, paceMs: 500 });
    for (const kind of kinds) {
      expect(timed[kind].failed, kind).toEqual([]);
      expect(timed[kind].times.length, kind).toBeGreaterThanOrEqual(5);
    }
    console.log(`p95, ms: ${kinds.map((kind) => `${kind} ${percentile(timed[kind].times, 95)}`).join(", ")}`);
    expect(Math.max(...minutes)).toBeLessThan(2 * 2 ** 30);
  });
});
