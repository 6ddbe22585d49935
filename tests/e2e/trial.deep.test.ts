import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

const sizes = [
  ["phone", phone],
  ["desktop", desktop],
] as const;
const looks = [
  ["", "light"],
  ["-dark", "dark"],
] as const;

const tee =
  "electrodeClass=E71T-11&electrodeDiameterMm=0.9&joint=tee&position=horizontal&thicknessMm=5&inputPower=230V";

async function open(window: BrowserContextOptions, path: string): Promise<Page> {
  const page = await (await browser.newContext(window)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  await page.goto(`${server.url}${path}`);
  return page;
}

/** Nothing lies wider than the window. */
const fits = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);

/** Both legs of a bead, as a gauge would give them. */
async function readLegs(page: Page, beadId: string, leg: number): Promise<void> {
  const address = `${server.url}/api/beads/${beadId}`;
  const { revision, content } = (await (await page.request.get(address)).json()) as {
    revision: number;
    content: { judgement: object };
  };
  const readings = ["leg-1", "leg-2"].map((quantity) => ({
    quantity,
    value: leg,
    instrument: "Leg gauge",
    resolution: 0.5,
  }));
  const saved = await page.request.put(address, {
    data: { basedOn: revision, content: { ...content, judgement: { ...content.judgement, readings } } },
    headers: { origin: server.url },
  });
  expect(saved.status()).toBe(200);
}

describe("from a plan to a card, on a phone", () => {
  it("through the run sheet and three beads of a trial", async () => {
    const page = await open(phone, `/plan?${tee}`);
    await page.getByRole("link", { name: "Run sheet" }).click();
    await page.getByText("each 25 mm").first().waitFor();
    await page.goBack();
    await page.getByRole("link", { name: "Make a trial of it" }).click();
    await page.getByRole("heading", { name: "New trial" }).waitFor();
    await page.getByRole("button", { name: "Travel speed" }).click();
    await page.getByRole("button", { name: "Wire feed" }).click();
    await page.getByRole("spinbutton", { name: "Beads", exact: true }).fill("3");
    await shoot(page, "trial-new-phone");
    expect(await fits(page)).toBe(true);
    await page.getByRole("button", { name: "Make the trial" }).click();
    const next = page.getByTestId("next");
    await next.getByText(/^Run 1 of 3/).waitFor();
    const trialUrl = page.url();
    for (const [run, leg] of [8.5, 6, 4].entries()) {
      await next.getByText(new RegExp(`^Run ${run + 1} of 3`)).waitFor();
      await next.getByRole("button", { name: "Begin this bead" }).click();
      await page.waitForURL(/\/beads\//);
      await page
        .getByTestId("series-note")
        .getByText(`Run ${run + 1} of 3 of`)
        .waitFor();
      await readLegs(page, page.url().split("/").at(-1)!, leg);
      await page.goto(trialUrl);
    }
    await next.getByText("All its beads were run").waitFor();
    await page.getByTestId("course").waitFor();
    expect(await page.getByTestId("best").textContent()).toMatch(/^(Best so far|No setting)/);
    expect(await fits(page)).toBe(true);
    await shoot(page, "trial-phone");
    await page.getByRole("link", { name: "Make a card of it" }).click();
    await page.getByRole("button", { name: "Make the card" }).waitFor();
    await page.getByLabel("C (%)", { exact: true }).fill("0.18");
    await page.getByLabel("Mn (%)").fill("1.2");
    await shoot(page, "card-new-phone");
    await page.getByRole("button", { name: "Make the card" }).click();
    const card = page.getByTestId("card");
    await card.getByText(/not a qualified procedure/).waitFor();
    expect(await card.getByText(/Carbon equivalent, IIW/).count()).toBe(1);
    expect(await fits(page)).toBe(true);
    await shoot(page, "card-phone");
    const pdf = await page.request.get(page.url().replace("/cards/", "/api/cards/") + "/pdf");
    expect((await pdf.body()).subarray(0, 5).toString()).toBe("%PDF-");
    await card.getByRole("button", { name: "Run a bead by it" }).click();
    await page.waitForURL(/\/beads\//);
    await page.locator('[data-tab="setup"]').click();
    await page.getByLabel(/^Voltage(?! knob)/).fill("27.5");
    await page
      .getByTestId("series-note")
      .getByText(/Voltage 27\.5 V, card/)
      .waitFor();
    await shoot(page, "card-watch-phone");
    const trialAt = trialUrl.slice(server.url.length);
    for (const [look, colorScheme] of looks) {
      const wide = await open({ ...desktop, colorScheme }, trialAt);
      await wide.getByTestId("course").waitFor();
      await wide.getByTestId("course").scrollIntoViewIfNeeded();
      await shoot(wide, `trial-desktop${look}`);
      await wide.goto(`${server.url}/cards`);
      await wide.getByRole("link", { name: /^Card 1/ }).click();
      await wide.getByTestId("card").waitFor();
      expect(await fits(wide)).toBe(true);
      await shoot(wide, `card-desktop${look}`);
    }
    const trends = await open(desktop, "/trends?by=card");
    await trends.getByRole("link", { name: /^Card 1/ }).waitFor();
    await trends.getByText("By no card").waitFor();
    await shoot(trends, "trends-by-card-desktop");
  });

  it("two knobs as contours, at a desk and on a phone, light and dark", async () => {
    const page = await open(desktop, `/trials/new?${tee}`);
    await page.getByRole("button", { name: "Travel speed" }).click();
    await page.getByRole("button", { name: "Make the trial" }).click();
    const next = page.getByTestId("next");
    await next.getByText(/^Run 1 of/).waitFor();
    const trialUrl = page.url();
    for (const [run, leg] of [8, 6, 5, 4].entries()) {
      await next.getByText(new RegExp(`^Run ${run + 1} of`)).waitFor();
      await next.getByRole("button", { name: "Begin this bead" }).click();
      await page.waitForURL(/\/beads\//);
      await readLegs(page, page.url().split("/").at(-1)!, leg);
      await page.goto(trialUrl);
    }
    for (const [size, window] of sizes)
      for (const [look, colorScheme] of looks) {
        const seen = await open({ ...window, colorScheme }, trialUrl.slice(server.url.length));
        const map = seen.getByTestId("course-map");
        await map.waitFor();
        expect(await map.locator("path").count()).toBeGreaterThan(2);
        expect(await map.locator("circle").count()).toBeGreaterThan(4);
        expect(await fits(seen)).toBe(true);
        await map.scrollIntoViewIfNeeded();
        await shoot(seen, `trial-contours-${size}${look}`);
      }
  });
});
