import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

let server: TestServer;
let browser: Browser;
let page: Page;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  page = await (await browser.newContext(desktop)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

/** Types the one limit of the set that is open, and saves. */
async function saveWidth(most: string, button: string): Promise<void> {
  const row = page.locator("fieldset").first();
  await row.getByLabel(/^Limit/).fill(most);
  await page.getByRole("button", { name: button }).click();
}

it("limits written here judge a bead, and the bead keeps its version when the next one is saved", async () => {
  await page.goto(`${server.url}/criteria/new`);
  await page.getByLabel("Title").first().fill("Stringers, first week");
  await page.getByRole("button", { name: "Add a limit" }).click();
  const row = page.locator("fieldset").first();
  await row.getByLabel("Measured by").selectOption("width");
  await row.getByLabel("Title").fill("Width");
  // Without a limit the field says what it wants, and nothing is saved.
  await page.getByRole("button", { name: "Save as version 1" }).click();
  await row.getByText(/^Type a limit/).waitFor();
  await saveWidth("9", "Save as version 1");
  await page.waitForURL(/\/criteria\/shop-stringers-first-week$/);

  const made = await fetch(`${server.url}/api/beads`, {
    method: "POST",
    body: JSON.stringify({
      judgement: { readings: [{ quantity: "width", value: 8, instrument: "Calliper", resolution: 0.05 }] },
    }),
  });
  const bead = `${server.url}/beads/${((await made.json()) as { id: string }).id}`;
  const bench = new Bench(page);
  await page.goto(bead);
  await bench.section("Verdict");
  await page.getByLabel("Judge by").selectOption("shop-stringers-first-week@1");
  await page.getByTestId("verdict-word").getByText("Meets the criteria").waitFor();
  await bench.saved();

  await page.goto(`${server.url}/criteria/shop-stringers-first-week`);
  await page
    .locator("fieldset")
    .first()
    .getByLabel(/^Limit/)
    .fill("7");
  await page.getByRole("button", { name: "Judge it" }).click();
  await page.getByTestId("tried").getByText("Does not meet.").waitFor();
  await saveWidth("7", "Save as the next version");
  await page.getByText(/^Saved as version 2/).waitFor();

  await page.goto(bead);
  await bench.section("Verdict");
  await page.getByText("There is a version 2 of these limits").waitFor();
  await page.getByTestId("verdict-word").getByText("Meets the criteria").waitFor();
  await shoot(page, "shop-limits-desktop");
  await page.getByRole("button", { name: "Judge by version 2" }).click();
  await page.getByTestId("verdict-word").getByText("Does not meet").waitFor();
  const listed = (await (await fetch(`${server.url}/api/criteria`)).json()) as {
    criteria: { id: string; shop: { newest: boolean } | null }[];
  };
  expect(listed.criteria.flatMap(({ id, shop }) => (shop ? [[id, shop.newest]] : []))).toEqual([
    ["shop-stringers-first-week@2", true],
    ["shop-stringers-first-week@1", false],
  ]);
});

it("a copy of a code names what it did not carry, in the editor, in the saved version and in a verdict by it", async () => {
  await page.goto(`${server.url}/criteria/new?from=iso-5817-c&kind=fillet&thickness=10`);
  const panel = page.getByRole("heading", { name: /^Not carried over from ISO 5817/ });
  await panel.waitFor();
  await page.getByText(/^Table 1, 1\.20 Insufficient throat/).waitFor();
  await page.getByRole("button", { name: /^A limit of ours says it: Table 1, 1\.23/ }).click();
  await page.getByText(/^Table 1, 1\.23 Spatter/).waitFor({ state: "detached" });
  await panel.scrollIntoViewIfNeeded();
  await shoot(page, "not-carried-desktop");
  await page.setViewportSize({ width: 390, height: 844 });
  await panel.scrollIntoViewIfNeeded();
  await shoot(page, "not-carried-phone");
  await page.setViewportSize(desktop.viewport);
  await page.getByLabel("Title").first().fill("Copy of C");
  await page.getByRole("button", { name: "Save as version 1" }).click();
  await page.waitForURL(/\/criteria\/shop-copy-of-c$/);
  await page.goto(`${server.url}/criteria/shop-copy-of-c?version=1`);
  await page.getByText(/^Not looked at here: .*1\.20 Insufficient throat/).waitFor();

  const bench = new Bench(page);
  await bench.newBead(server.url);
  await bench.section("Verdict");
  await page.getByLabel("Judge by").selectOption("shop-copy-of-c@1");
  const said = page.getByTestId("not-carried");
  await said.getByText(/1\.20 Insufficient throat/).waitFor();
  expect(await said.textContent()).not.toContain("Spatter");
  await bench.saved();
  await shoot(page, "not-carried-verdict-desktop");
});
