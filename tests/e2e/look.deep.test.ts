import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openDb } from "@/lib/db";
import { growShop } from "@/lib/demo/grow-shop";
import { storePlainPhotos } from "../setup/plain-photos";
import { PATIENT_MS } from "../setup/patience";
import { closeWindows, desktop, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";

/** So many that a look at them takes some seconds. */
const BEADS = 600;
let server: TestServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  const db = openDb(`file:${path.join(server.dataFolder, "toeline.db")}`);
  const photos = await storePlainPhotos(db, server.dataFolder);
  await growShop(
    { db, by: "test" },
    { beads: BEADS, seed: 7, until: new Date("2026-11-26T12:00:00Z"), photos },
  );
  await db.$disconnect();
  page = await (await browser.newContext(desktop)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

const verify = () => page.getByRole("button", { name: "Verify everything" });
const stop = () => page.getByRole("button", { name: "Stop looking" });
const panel = () => page.locator("main");
/** Some way into the longest part. */
const midway = () => page.getByText(/what lists and figures say: [1-9]\d* of 600/).waitFor();

/** Everything that the live regions of the page say, from now on. */
const listen = () =>
  page.evaluate(() => {
    const said: string[] = [];
    (window as unknown as { said: string[] }).said = said;
    for (const region of document.querySelectorAll("main [aria-live]"))
      new MutationObserver(() => said.push(region.textContent ?? "")).observe(region, {
        ...{ childList: true, subtree: true, characterData: true },
      });
  });
const heard = () => page.evaluate(() => [...new Set((window as unknown as { said: string[] }).said)]);

describe("a look at all records, on the page of the log", () => {
  it("says how far it is, is stopped, and then says how far it came and nothing of the whole", async () => {
    await page.goto(`${server.url}/log`);
    await verify().click();
    await midway();
    expect(await page.getByRole("progressbar", { name: "How far this part is" }).count()).toBe(1);
    await shoot(page, "log-looking-desktop");
    // Others are served meanwhile: the look can still be stopped after that.
    expect((await fetch(`${server.url}/api/beads?limit=1`)).status).toBe(200);
    await stop().click();
    await page.getByText(/^Stopped before everything was looked at\..*the rest was not looked at/).waitFor();
    await shoot(page, "log-stopped-desktop");
    expect(await panel().innerText()).not.toContain("Everything fits");
    expect(await stop().count()).toBe(0);
  });

  it("that was going when the page was loaded anew broke off, and so it says", async () => {
    await verify().click();
    await midway();
    await page.reload();
    await page.getByText(/The look broke off before everything was looked at.*left or loaded anew/).waitFor();
    expect(await panel().innerText()).not.toContain("Everything fits");
    await page.reload();
    await verify().waitFor();
    expect(await panel().innerText()).not.toContain("broke off");
  });

  it("goes to its end, and is read out by parts and quarters, not at every number", async () => {
    await listen();
    await verify().click();
    await page.getByText(/^Everything fits: 600 log entries, 600 records, 3 photos/).waitFor();
    const said = await heard();
    expect(said.at(-1)).toMatch(/^Everything fits/);
    expect(said.some((one) => /^Looking at what lists and figures say.*half done/.test(one))).toBe(true);
    expect(said.length).toBeLessThan(25);
  });

  it("whose server goes away broke off", async () => {
    await verify().click();
    await midway();
    await server.kill();
    await page.getByText(/The look broke off before everything was looked at/).waitFor();
    expect(await panel().innerText()).not.toContain("Everything fits");
    await server.revive();
    await verify().click();
    await page.getByText(/^Everything fits/).waitFor();
  });
});
