import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, desktop, kept, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";
import { inDepth, itDeep } from "../setup/in-depth";

const root = fileURLToPath(new URL("../..", import.meta.url));
const jpeg = path.join(root, "demo-images/set/tee-undercut.jpg");
const heic = path.join(root, "tests/fixtures/photos/plate.heic");

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

async function openPage(
  device: Parameters<Browser["newContext"]>[0],
): Promise<{ page: Page; errors: string[] }> {
  const context = await browser.newContext(device);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENT_MS);
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
  return { page, errors };
}

/** What the person would compare before and after a restart. */
async function readResult(
  bench: Bench,
): Promise<{ causes: string; change: string; verdict: string; marks: number }> {
  await bench.section("Causes");
  const causes = await bench.page.getByTestId("causes").innerText();
  const change = await bench.page.getByTestId("first-change").innerText();
  await bench.section("Verdict");
  const verdict = await bench.page.getByTestId("verdict-word").innerText();
  return { causes, change, verdict, marks: await bench.marks() };
}

/** The example for a T-joint on 230 V input. */
const tee = /T-joint.*230|230.*T-joint/i;

/** The ordinary run takes the dearer one, the deep one both. */
const photos = [
  { kind: "JPEG", file: jpeg },
  { kind: "HEIC", file: heic },
];

describe.each(inDepth(photos.slice(1), photos))("from a photo to the one change, $kind", ({ kind, file }) => {
  it("does the whole path, and finds it all again after a restart", async () => {
    const { page, errors } = await openPage(kept(desktop));
    const bench = new Bench(page);
    await bench.newBead(server.url);
    await bench.addPhoto(file);
    await bench.photoShown();
    const { width, height } = await page.evaluate(async () => {
      const answer = await fetch(`/api/beads/${location.pathname.split("/").pop()}`);
      const [photo] = ((await answer.json()) as { photos: { widthPx: number; heightPx: number }[] }).photos;
      return { width: photo?.widthPx ?? 0, height: photo?.heightPx ?? 0 };
    });
    const x = (share: number) => Math.round(width * share);
    const y = (share: number) => Math.round(height * share);

    expect(await page.getByTestId("scale-note").innerText()).toContain("No scale");
    await bench.drawLine(
      [
        [x(0.3), y(0.5)],
        [x(0.45), y(0.5)],
        [x(0.6), y(0.52)],
      ],
      "Undercut",
    );
    await bench.expectMarks(1);
    await page.getByText("no scale").first().waitFor();
    await bench.setScale([x(0.2), y(0.8)], [x(0.6), y(0.8)], "50");

    await bench.section("Set-up");
    await bench.exampleSetup(tee);
    await bench.section("Causes");
    await bench.untilChange();
    await bench.section("Verdict");
    await page.getByLabel("Judge by").selectOption({ index: 1 });
    await page.getByTestId("verdict-word").waitFor();
    await bench.saved();
    const before = await readResult(bench);
    await shoot(page, `desktop-verdict-${kind}`);
    await bench.section("Causes");
    await shoot(page, `desktop-causes-${kind}`);
    expect(before.marks).toBe(1);

    const address = page.url();
    await page.goto("about:blank");
    await server.restart();
    await page.goto(address);
    await bench.photoShown();
    expect(await readResult(bench)).toEqual(before);

    await page.goto(`${address}/sheet`);
    await page.getByRole("heading", { name: "What is there" }).waitFor();
    expect(await page.getByRole("article").innerText()).toContain("Undercut");
    await shoot(page, `sheet-${kind}`);
    // A phone's page takes the small picture, a desk's and whatever goes on paper the sharp one.
    const picture = async () =>
      (
        await page
          .getByRole("img", { name: /^Photo 1/ })
          .evaluate(async (img: HTMLImageElement) => (await img.decode(), img.currentSrc))
      )
        .split("/")
        .pop();
    expect(await picture()).toBe("small");
    // Read on a phone it runs down, not out to the side.
    await page.setViewportSize(phone.viewport);
    await shoot(page, `sheet-narrow-${kind}`);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(phone.viewport.width);
    await expect.poll(picture).toBe("page");
    await page.emulateMedia({ media: "print" });
    await expect.poll(picture).toBe("small");
    await page.emulateMedia({ media: "screen" });
    // And what to change comes right after the photo.
    const top = async (part: Locator) => (await part.boundingBox())!.y;
    const change = await top(page.getByTestId("first-change"));
    expect(change).toBeGreaterThan(await top(page.getByRole("figure").first()));
    for (const name of ["How it was run", "What is there"])
      expect(change).toBeLessThan(await top(page.getByRole("heading", { name })));
    await page.setViewportSize(desktop.viewport);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe("on a phone, 390 x 844, by touch", () => {
  itDeep("marks a bead and gets a cause", async () => {
    const { page, errors } = await openPage(kept(phone));
    const bench = new Bench(page);
    await bench.newBead(server.url);
    await shoot(page, "phone-new");
    await bench.addPhoto(jpeg);
    await bench.photoShown();
    await bench.setScale([300, 900], [900, 900], "2 in", "tap");
    await bench.drawLine(
      [
        [500, 600],
        [700, 610],
        [900, 620],
      ],
      "Undercut",
      "tap",
    );
    await bench.expectMarks(1);
    await shoot(page, "phone-marks");
    await bench.section("Set-up");
    await shoot(page, "phone-setup");
    await bench.exampleSetup(tee);
    await bench.section("Causes");
    await bench.untilChange();
    await shoot(page, "phone-causes");
    await bench.section("Verdict");
    await page.getByLabel("Judge by").selectOption({ index: 1 });
    await page.getByTestId("verdict-word").waitFor();
    await shoot(page, "phone-verdict");
    // Nothing may stick out sideways: a page that scrolls both ways cannot be worked with a glove.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await bench.saved();
    await page.goto(server.url);
    await page.locator("li").getByText("Undercut").first().waitFor();
    await shoot(page, "phone-list");
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
