import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startServers, type Servers } from "../load/servers";
import { lostOf, workTogether, wrongCodes } from "../load/together";

let servers: Servers;
beforeAll(async () => {
  servers = await startServers(2);
});
afterAll(() => servers?.stop());

describe("two servers on one database and one place of photos", () => {
  it("lose nothing they said yes to, give each bead a number without a gap, and one of them may be killed", async () => {
    const work = { people: 6, minutes: 0.5, thinkMs: 500, kill: true };
    const done = await workTogether(servers, work);
    for (const { failed, times } of [done.list, done.make, done.save, done.upload]) {
      expect(failed).toEqual([]);
      expect(times.length).toBeGreaterThan(5);
    }
    const [from, to] = done.down ?? [0, 0];
    expect(to).toBeGreaterThan(from);
    // Connections break while one is away, and at no other time.
    for (const at of done.broken) expect(at >= from - 1000 && at <= to + 1000).toBe(true);
    expect(done.broken.length).toBeGreaterThan(0);
    expect(await lostOf(servers, done)).toEqual([]);
    // And what is not there is seen.
    const [one] = done.acknowledged;
    for (const wrong of [
      { ...one!, number: 100_000 },
      { ...one!, saved: { revision: 9, title: "Never sent" } },
      { ...one!, sha256: "0".repeat(64) },
      { ...one!, id: "nobody" },
    ])
      expect(await lostOf(servers, { ...done, acknowledged: [wrong] })).not.toEqual([]);
  });

  it("count wrong codes together", async () => {
    const statuses = await wrongCodes(servers, 40);
    expect(statuses.filter((status) => status === 404)).toHaveLength(30);
    expect(statuses.filter((status) => status === 429)).toHaveLength(10);
  });
});
