import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { load, p95 } from "../load/people";
import { startServer, type TestServer } from "./support/server";

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server?.stop());

describe("five people at once", () => {
  it("are all served, and the server's memory is bounded", async () => {
    const { list, save, upload, mostBytes } = await load(server, { people: 5, minutes: 0.2, thinkMs: 500 });
    for (const { failed, times } of [list, save, upload]) {
      expect(failed).toEqual([]);
      expect(times.length).toBeGreaterThanOrEqual(5);
    }
    console.log(`p95, ms: list ${p95(list.times)}, save ${p95(save.times)}, upload ${p95(upload.times)}`);
    expect(mostBytes).toBeLessThan(2 * 2 ** 30);
  });
});
