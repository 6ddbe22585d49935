import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { openDb } from "@/lib/db";
import { verifyRecords } from "@/lib/verify";
import { PATIENT_MS } from "../setup/patience";
import { Bench } from "./support/bench";
import { desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";

const root = fileURLToPath(new URL("../..", import.meta.url));
const jpeg = path.join(root, "demo-images/set/tee-undercut.jpg");
const otherJpeg = path.join(root, "demo-images/set/lap-cold-lap.jpg");

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** What the server holds, past every screen. */
async function stored() {
  const answer = await fetch(`${server.url}/api/beads?limit=500`);
  return (
    (await answer.json()) as {
      beads: { id: string; content: { photos: { drawing: { marks: object[] } }[] } }[];
    }
  ).beads;
}
const marksOf = async (id: string) =>
  (await stored()).find((bead) => bead.id === id)?.content.photos.map(({ drawing }) => drawing.marks.length);

async function saveState(bench: Bench, state: string) {
  await bench.page.waitForSelector(`[data-testid="save-state"][data-state="${state}"]`, {
    timeout: PATIENT_MS,
  });
}
async function point(bench: Bench, x: number, y: number) {
  await bench.tool("Point");
  await bench.click(x, y);
  await bench.pick("Undercut");
}

describe("the server goes and comes back while somebody marks", () => {
  it("everything is there without a press, a reload in between included", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await point(bench, 500, 400);
    await bench.saved();
    const id = page.url().split("/").at(-1) ?? "";
    expect(await marksOf(id)).toEqual([1]);

    await server.kill();
    await point(bench, 600, 420);
    await saveState(bench, "waiting");
    expect(await page.getByTestId("save-state").innerText()).toBe("Kept on this device, 1 to send");
    // The page itself comes from this device, as the browser would do where there is no service worker: the server is
    // started, and what it serves is older than what lies here.
    await server.revive();
    await page.route("**/api/beads/**", (route) => route.abort());
    await page.reload();
    await bench.photoHere();
    await bench.expectMarks(2);
    await point(bench, 700, 430);
    await bench.expectMarks(3);
    await page.reload();
    await bench.photoHere();
    await bench.expectMarks(3);
    expect(await marksOf(id)).toEqual([1]);
    await page.unroute("**/api/beads/**");
    await bench.saved();
    expect(await marksOf(id)).toEqual([3]);
    await page.context().close();
  });
});
