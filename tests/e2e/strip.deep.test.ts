import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { windows } from "./support/windows";
import { PATIENT_MS } from "../setup/patience";

const set = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set");
const picture = (name: string) => path.join(set, `${name}.jpg`);

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

/** Where the renderer says that the strip's corners lie in the picture. */
const Truth = z.object({
  scaleObject: z.object({
    kind: z.literal("strip"),
    keyPoints: z.array(
      z.object({ px: z.tuple([z.number(), z.number()]), planeMm: z.tuple([z.number(), z.number()]) }).loose(),
    ),
  }),
});

describe("the printed strip", () => {
  it.each(windows)("is found in the photo without a click, on a %s", async (name, window) => {
    const { keyPoints } = Truth.parse(
      JSON.parse(readFileSync(path.join(set, "lap-cold-lap.json"), "utf8")),
    ).scaleObject;
    const page = await (await browser.newContext(window)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await bench.newBead(server.url);
    await bench.addPhoto(picture("lap-cold-lap"));
    await bench.photoShown();
    await bench.tool("Scale");
    await page.getByRole("button", { name: "Find the printed strip" }).click();
    const note = page.getByTestId("scale-note").getByText(/Scale set/);
    await note.waitFor();
    await shoot(page, `strip-found-${name}`);
    expect(await note.textContent()).toMatch(/mm per photo pixel, camera tilted \d+°/);
    // The two key points farthest apart, marked as a person would: their true distance lies in the stated interval.
    const [a, b] = farthest(keyPoints);
    await bench.drawLine([a.px, b.px], "Undercut", name === "phone" ? "tap" : "click");
    const size = page.getByText(/\d+(\.\d+)? ± \d+(\.\d+)? mm/).first();
    await size.waitFor();
    const [, value, spread] =
      /(\d+(?:\.\d+)?) ± (\d+(?:\.\d+)?) mm/.exec((await size.textContent()) ?? "") ?? [];
    const trueMm = Math.hypot(a.planeMm[0] - b.planeMm[0], a.planeMm[1] - b.planeMm[1]);
    expect(Math.abs(Number(value) - trueMm)).toBeLessThanOrEqual(Number(spread));
    expect(Number(spread)).toBeLessThan(0.05 * trueMm);
    await shoot(page, `strip-measured-${name}`);
  });

  it("is refused in a sentence where there is none", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await bench.newBead(server.url);
    await bench.addPhoto(picture("tee-undercut"));
    await bench.photoShown();
    await bench.tool("Scale");
    await page.getByRole("button", { name: "Find the printed strip" }).click();
    await page.getByRole("alert").filter({ hasText: /strip/i }).waitFor();
    await shoot(page, "strip-not-found-desktop");
  });
});

type KeyPoint = z.infer<typeof Truth>["scaleObject"]["keyPoints"][number];

function farthest(points: readonly KeyPoint[]): readonly [KeyPoint, KeyPoint] {
  const pairs = points.flatMap((a) => points.map((b) => [a, b] as const));
  const length = ([a, b]: readonly [KeyPoint, KeyPoint]) => Math.hypot(a.px[0] - b.px[0], a.px[1] - b.px[1]);
  return pairs.reduce((best, pair) => (length(pair) > length(best) ? pair : best));
}
