import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { PATIENT_MS } from "../setup/patience";
import { Bench } from "./support/bench";
import { heldScripts } from "./support/held-scripts";
import { isListenedTo } from "./support/listened";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";

/** Where the bead and its rolled-over toe lie on the picture, photo pixels, by its generator. */
const WELD: [number, number][] = [[360, 600], [1410, 630]]; // prettier-ignore
const TOE: [number, number][] = [[540, 641], [900, 650]]; // prettier-ignore

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

it("leads a first visitor from the list to an answer, by keys too, and is offered once", async () => {
  const page = await (await browser.newContext(desktop)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  const bench = new Bench(page);
  await page.goto(server.url);
  await shoot(page, "first-visit-desktop");
  await page.getByRole("button", { name: "Show me" }).click();
  await page.waitForURL(/\/beads\/[a-z0-9]+\?guide/);
  await bench.photoHere();
  const guide = page.getByRole("complementary", { name: "Your first bead" });
  await guide.getByText("1. Say how large it is.").waitFor();
  await shoot(page, "guide-desktop");

  // The focus is on a part of the page that has no field.
  await bench.section("Set-up");
  await page.keyboard.press("s");
  await page.getByRole("button", { name: "Find the printed strip" }).click();
  await guide.getByText("2. Say where the weld lies.").waitFor();
  await page.getByRole("button", { name: "Set-up" }).focus();
  await page.keyboard.press("w");
  for (const at of WELD) await bench.click(...at);
  await page.getByRole("button", { name: "Done" }).click();
  await guide.getByText("3. Mark what you see.").waitFor();
  await bench.drawLine(TOE, "Cold lap");
  await guide.getByText("4. Read the answer.").waitFor();

  await page.getByRole("button", { name: "Set-up" }).focus();
  await page.keyboard.press("?");
  const keys = page.getByRole("dialog", { name: "Keys" });
  await keys.getByText("Line: Tap along it").waitFor();
  await shoot(page, "keys-desktop");
  // What lies over the page has the keys.
  await page.keyboard.press("p");
  await keys.getByRole("button", { name: "Close" }).click();
  expect(await page.getByRole("radio", { name: "Point", exact: true }).isChecked()).toBe(false);

  // A letter in a field is a letter.
  await page.locator("summary", { hasText: /^Note$/ }).click();
  await page.locator("#bead-note").fill("Sounded like frying");
  await page.locator("#bead-note").press("p");
  expect(await page.getByRole("radio", { name: "Point", exact: true }).isChecked()).toBe(false);
  expect(await page.locator("#bead-note").inputValue()).toBe("Sounded like fryingp");

  await bench.section("Causes");
  await guide.getByText("That was a whole bead.").waitFor();
  await shoot(page, "guide-done-desktop");
  await guide.getByRole("button", { name: "Close" }).click();
  await guide.waitFor({ state: "detached" });
  await bench.saved();
  await page.goto(server.url);
  await page.getByText("First bead, step by step").first().waitFor();
  expect(await page.getByText("New here?").count()).toBe(0);
  await page.goto(`${page.url()}?q=frying`);
  await page.getByText("First bead, step by step").first().waitFor();

  // The server writes it for everybody, so that nothing moves when the page's code comes; who has answered never sees it.
  const code = await heldScripts(page);
  code.hold();
  await page.goto(server.url, { waitUntil: "commit" });
  const offer = page.getByText("New here?");
  await offer.waitFor({ state: "attached" });
  expect(await isListenedTo(page)).toBe(false);
  expect(await offer.isVisible()).toBe(false);
  await code.let();
  await offer.waitFor({ state: "detached" });
});

it("is left at any time, and a no is a no", async () => {
  const page = await (await browser.newContext(phone)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  await page.goto(server.url);
  await page.getByRole("button", { name: "Not now" }).tap();
  await page.getByText("New here?").waitFor({ state: "detached" });
  await page.reload();
  await page.getByRole("link", { name: "New bead" }).waitFor();
  expect(await page.getByText("New here?").count()).toBe(0);
});
