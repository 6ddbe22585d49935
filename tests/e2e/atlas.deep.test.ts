import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PATIENT_MS } from "../setup/patience";
import { Bench } from "./support/bench";
import { desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { windows } from "./support/windows";

const jpeg = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set/tee-undercut.jpg");

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const picker = (page: Page): Locator => page.getByRole("dialog", { name: "What is it?" });

/** That the picker leaves this photo pixel free, on the screen and not under it. */
async function expectBeside(bench: Bench, x: number, y: number): Promise<void> {
  const asked = picker(bench.page);
  await asked.waitFor();
  const box = (await asked.boundingBox())!;
  const spot = await bench.at(x, y);
  const size = bench.page.viewportSize()!;
  const covered =
    spot.x >= box.x && spot.x <= box.x + box.width && spot.y >= box.y && spot.y <= box.y + box.height;
  expect([spot, box, covered]).toEqual([spot, box, false]);
  expect(spot.y).toBeGreaterThan(0);
  expect(spot.y).toBeLessThan(size.height);
}

/** Every picture in sight has arrived. */
async function picturesThere(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      [...document.querySelectorAll<HTMLImageElement>('img[src^="/close-ups/"]')]
        .filter((img) => {
          const { top, bottom } = img.getBoundingClientRect();
          return bottom > 0 && top < window.innerHeight;
        })
        .every((img) => img.complete && img.naturalWidth > 0),
    undefined,
    { timeout: PATIENT_MS },
  );
}

describe("the picker teaches", () => {
  it("comes from below on a phone, and the photo brings the spot into what is left free", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, phone);
    const { page } = bench;
    for (const [x, y] of [
      [300, 200],
      [900, 700],
      [1500, 1250],
    ] as const) {
      await bench.tool("Point");
      const before = await bench.canvas.getAttribute("data-pan-y");
      const scrolled = await page.evaluate(() => window.scrollY);
      await bench.tap(x, y);
      await expectBeside(bench, x, y);
      await picturesThere(page);
      await shoot(page, `phone-picker-${y}`);
      await picker(page).getByRole("button", { name: "Close without naming" }).click();
      await picker(page).waitFor({ state: "hidden" });
      // Whoever marks the next one finds it where it was.
      await expect.poll(() => bench.canvas.getAttribute("data-pan-y")).toBe(before);
      await expect.poll(() => page.evaluate(() => window.scrollY)).toBe(scrolled);
    }
    await page.context().close();
  });

  it("lies beside the spot on a desk, finds words of the shop, and shows whoever is not sure how to tell", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await bench.drawLine(
      [
        [500, 560],
        [900, 575],
      ],
      "Undercut",
    );
    for (const [x, y] of [
      [200, 300],
      [950, 640],
      [1700, 1000],
    ] as const) {
      await bench.tool("Point");
      await bench.click(x, y);
      await expectBeside(bench, x, y);
      await picturesThere(page);
      await shoot(page, `desk-picker-${x}`);
      await page.keyboard.press("Escape");
      await picker(page).waitFor({ state: "hidden" });
    }

    await bench.tool("Point");
    await bench.click(900, 600);
    const asked = picker(page);
    await asked.getByRole("searchbox").fill("rollover");
    await asked.getByRole("button", { name: /^Cold lap/ }).waitFor();
    await asked.getByRole("searchbox").fill("");
    // The number of the standard is shown to whoever types one.
    expect(await asked.getByText("ISO 6520-1").count()).toBe(0);
    await asked.getByRole("searchbox").fill("501");
    await asked.getByText("ISO 6520-1: 501").first().waitFor();
    await asked.getByRole("searchbox").fill("");

    await asked.getByRole("button", { name: "Not sure" }).click();
    await asked.getByText("What do you see?").waitFor();
    await picturesThere(page);
    await shoot(page, "desk-not-sure");
    await asked.getByRole("button", { name: "Something wrong at the edge of the bead" }).click();
    await asked.getByRole("button", { name: "Undercut" }).click();
    await asked.getByText("Undercut, or something like it?").waitFor();
    await picturesThere(page);
    await shoot(page, "desk-how-to-tell");
    await asked.getByRole("button", { name: "It is this: Crack at the toe" }).click();
    await asked.waitFor({ state: "hidden" });
    await page.getByRole("list", { name: "Marks on this photo" }).getByText("Crack at the toe").waitFor();
    await page.context().close();
  });
});

describe("the atlas", () => {
  it.each(windows)(
    "is reached from the menu and read on a %s without a scroll sideways",
    async (name, device) => {
      const page = await (await browser.newContext(device)).newPage();
      page.setDefaultTimeout(PATIENT_MS);
      await page.goto(server.url);
      await page.getByRole("button", { name: "More" }).click();
      await page.getByRole("link", { name: "Atlas of imperfections" }).click();
      await page.getByRole("heading", { name: "Atlas of imperfections", level: 1 }).waitFor();
      await picturesThere(page);
      await shoot(page, `${name}-atlas`);
      await page.getByRole("searchbox").fill("burn thru");
      await page.getByRole("link", { name: /^Burn-through/ }).click();
      await page.getByRole("heading", { name: "Burn-through", level: 1 }).waitFor();
      await picturesThere(page);
      await shoot(page, `${name}-atlas-kind`);
      await page.goto(`${server.url}/atlas/undercut?process=FCAW-S`);
      await picturesThere(page);
      await shoot(page, `${name}-atlas-undercut`);
      const wide = await page.evaluate(
        () => [document.documentElement.scrollWidth, window.innerWidth] as const,
      );
      expect(wide[0]).toBeLessThanOrEqual(wide[1]);
      const full = await page.screenshot({ fullPage: true });
      expect(full.length).toBeGreaterThan(10_000);
      await page.context().close();
    },
  );

  it("has no page for what is no imperfection", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    const answer = await page.goto(`${server.url}/atlas/sadness`);
    expect(answer?.status()).toBe(404);
    await page.context().close();
  });
});
