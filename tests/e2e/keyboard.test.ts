import path from "node:path";
import { fileURLToPath } from "node:url";
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser } from "./support/browser";
import { sharedServer, type SharedServer } from "./support/server";
import { itDeep } from "../setup/in-depth";
import { PATIENT_MS } from "../setup/patience";

const jpeg = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set/tee-undercut.jpg");

let server: SharedServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([sharedServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
});

/** Presses Tab until what has the focus is the wanted thing; a keyboard user has no other way there. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never reaches ${selector}`);
}

async function press(page: Page, key: string, times: number): Promise<void> {
  for (let k = 0; k < times; k += 1) await page.keyboard.press(key);
}

describe("with the keyboard alone", () => {
  it("marks, scales, names and gets a cause", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await page.goto(server.url);
    await tabTo(page, 'a[href="/beads/new"]');
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/beads\/[a-z0-9]+$/);
    // The operating system's file dialog is the one thing no page test can type into.
    await bench.addPhoto(jpeg);
    await bench.photoShown();

    await tabTo(page, '[data-testid="bead-canvas"]');
    await page.keyboard.press("l");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Space");
    await press(page, "Shift+ArrowRight", 6);
    await page.keyboard.press("Space");
    await page.keyboard.press("Enter");
    await page.getByRole("dialog", { name: "What is it?" }).waitFor();
    await tabTo(page, "input[type=search]");
    await page.keyboard.type("undercut");
    await page.keyboard.press("Enter");
    await bench.expectMarks(1);

    await tabTo(page, '[data-testid="bead-canvas"]');
    await page.keyboard.press("s");
    await press(page, "Shift+ArrowDown", 4);
    await page.keyboard.press("Space");
    await press(page, "Shift+ArrowLeft", 8);
    await page.keyboard.press("Space");
    await page.getByRole("dialog", { name: "How far apart are the two points?" }).waitFor();
    await page.keyboard.type("50");
    await page.keyboard.press("Enter");
    await page
      .getByTestId("scale-note")
      .getByText(/Scale set: 50 mm/)
      .waitFor();

    await tabTo(page, '[data-testid="bead-canvas"]');
    await page.keyboard.press("Control+z");
    await page
      .getByTestId("scale-note")
      .getByText(/No scale/)
      .waitFor();
    await page.keyboard.press("Control+Shift+z");
    await page
      .getByTestId("scale-note")
      .getByText(/Scale set/)
      .waitFor();

    await tabTo(page, 'button[data-tab="causes"]');
    await page.keyboard.press("Enter");
    await page.getByTestId("causes").waitFor();
    expect(await page.getByTestId("causes").locator("li").count()).toBeGreaterThan(2);
    await bench.saved();
    await page.context().close();
  });
});

describe("accessibility", () => {
  itDeep("has no violation that axe-core knows, on the list, the workbench and the sheet", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await bench.drawLine(
      [
        [400, 500],
        [600, 510],
      ],
      "Undercut",
    );
    const look = async () => {
      await page.addScriptTag({ content: axe.source });
      const found = await page.evaluate(async () => {
        const run = (
          window as unknown as {
            axe: {
              run: (options: unknown) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
            };
          }
        ).axe.run;
        const { violations } = await run({ runOnly: ["wcag2a", "wcag2aa"] });
        return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 160)}`);
      });
      return found;
    };
    const found: Record<string, string[]> = { setup: await look() };
    for (const name of ["Causes", "Verdict"] as const) {
      await bench.section(name);
      if (name === "Verdict") await page.getByLabel("Judge by").selectOption({ index: 1 });
      await page.waitForTimeout(200);
      found[name] = await look();
    }
    await bench.saved();
    await page.goto(`${page.url()}/sheet`);
    found["sheet"] = await look();
    await page.goto(server.url);
    found["list"] = await look();
    expect(found).toEqual({ setup: [], Causes: [], Verdict: [], sheet: [], list: [] });
    await page.context().close();
  });
});
