import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { fillDemo } from "@/lib/cli/prepare.mjs";
import { openDb } from "@/lib/db";
import { readPdf } from "../lib/pdf/read-pdf";
import { layMigrated } from "../setup/migrated";
import { PATIENT_MS } from "../setup/patience";
import { closeWindows, desktop, openBrowser, phone } from "./support/browser";
import { listened } from "./support/listened";
import { startServer, type TestServer } from "./support/server";

let folder = "";
let server: TestServer;
let browser: Browser;
let beads: readonly { readonly id: string; readonly number: number }[] = [];

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "toeline-printed-"));
  const file = path.join(folder, "toeline.db");
  await layMigrated(file);
  fillDemo(folder);
  const db = openDb(`file:${file}`);
  beads = await db.bead.findMany({ select: { id: true, number: true }, orderBy: { number: "asc" } });
  await db.$disconnect();
  [server, browser] = await Promise.all([startServer(folder), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** Points; what lies on the photo is as large as its marks. */
const FINE = 7.4;
/** Without spaces, and without the signs that a style sheet puts between and around what is printed. */
const squeezed = (text: string): string => text.replace(/[\s•;·()]+/g, "");

describe("the sheet that a browser prints", () => {
  it("is one A4 page for each bead of the demo, with every line that stands on the screen, none too small", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    const amiss: string[] = [];
    expect(beads.length).toBeGreaterThan(20);
    for (const { id, number } of beads) {
      await page.goto(`${server.url}/beads/${id}/sheet`);
      await page.waitForLoadState("networkidle");
      const lines = await page.locator("article :is(p, dd, dt, td, li, h1, h2)").allInnerTexts();
      const printed = await readPdf(new Uint8Array(await page.pdf({ preferCSSPageSize: true })));
      const said = squeezed(printed.map(({ text }) => text).join(" "));
      const items = printed.flatMap((one) => one.items).filter(({ text }) => text.trim() !== "");
      if (printed.length !== 1) amiss.push(`bead ${number}: ${printed.length} pages`);
      amiss.push(
        ...lines
          .flatMap((line) => line.split("\n"))
          .filter((line) => !said.includes(squeezed(line)))
          .map((line) => `bead ${number} does not print ${line}`),
      );
      expect(items.length).toBeGreaterThan(50);
      const [box] = printed[0]?.imageBoxes ?? [];
      const small = items.filter(
        ({ x, y, size }) =>
          size < FINE && !(box && x < box.x + box.width && y > box.y && y < box.y + box.height),
      );
      amiss.push(...small.map(({ text }) => `bead ${number}: ${text} is too small`));
    }
    expect(amiss).toEqual([]);
  });
});

/** Layout shift (Chromium's own figure): 0.07 here with faces of other widths in their place until then. */
const MOST_SHIFT = 0.02;

describe("a page on a slow line", () => {
  it("stands still when its type arrives", async () => {
    const shifts: Record<string, number> = {};
    for (const address of ["/", ...beads.slice(0, 4).map(({ id }) => `/beads/${id}/sheet`)]) {
      const page = await (await browser.newContext(phone)).newPage();
      page.setDefaultTimeout(PATIENT_MS);
      let arrive: () => void = () => undefined;
      const arrived = new Promise<void>((resolve) => (arrive = resolve));
      await page.route(/\.woff2$/, async (route) => {
        await arrived;
        await route.continue();
      });
      await page.addInitScript(() => {
        const all = globalThis as unknown as { shift: number };
        all.shift = 0;
        new PerformanceObserver((list) => {
          for (const one of list.getEntries()) all.shift += (one as unknown as { value: number }).value;
        }).observe({ type: "layout-shift", buffered: true });
      });
      await page.goto(server.url + address, { waitUntil: "commit" });
      await page.locator("main, article").first().waitFor();
      await listened(page);
      arrive();
      await page.evaluate(() => document.fonts.ready);
      expect(await page.evaluate(() => document.fonts.check('600 16px "Barlow"'))).toBe(true);
      await page.waitForTimeout(500);
      shifts[address] = await page.evaluate(() => (globalThis as unknown as { shift: number }).shift);
      await page.context().close();
    }
    expect(Object.values(shifts).filter((shift) => shift > MOST_SHIFT)).toEqual([]);
  });
});
