import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { listened } from "./support/listened";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

const root = fileURLToPath(new URL("../..", import.meta.url));
const picture = (name: string) => path.join(root, `demo-images/set/${name}.jpg`);

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

async function asked<T>(to: string, init: RequestInit = {}): Promise<T> {
  const answer = await fetch(`${server.url}${to}`, init);
  expect(answer.ok, `${to}: ${answer.status}`).toBe(true);
  return (await answer.json()) as T;
}

/** A bead with one photo, a scale, a weld line and an undercut of so many pixels. */
async function bead(name: string, undercutPx: number): Promise<string> {
  const json = { origin: server.url, "content-type": "application/json" };
  const { id } = await asked<{ id: string }>("/api/beads", { method: "POST", headers: json, body: "{}" });
  const { photo } = await asked<{ photo: { id: string } }>(`/api/beads/${id}/photos`, {
    method: "POST",
    headers: { origin: server.url, "content-type": "image/jpeg" },
    body: new Uint8Array(readFileSync(picture(name))),
  });
  const { revision, content } = await asked<{ revision: number; content: object }>(`/api/beads/${id}`);
  const undercut = {
    ...{ id: "u", imperfection: "undercut", place: null, stretch: null, patterns: [], gauge: [], note: "" },
    shape: {
      kind: "line",
      points: [
        { x: 300, y: 500 },
        { x: 300 + undercutPx, y: 500 },
      ],
    },
  };
  const drawing = {
    schemaVersion: 1,
    scale: { kind: "two-points", a: { x: 100, y: 900 }, b: { x: 1300, y: 900 }, lengthMm: 120 },
    weldLine: [
      { x: 150, y: 560 },
      { x: 1350, y: 570 },
    ],
    marks: [undercut],
  };
  const body = JSON.stringify({
    basedOn: revision,
    content: { ...content, photos: [{ id: photo.id, role: "face", drawing }] },
  });
  await asked(`/api/beads/${id}`, { method: "PUT", headers: json, body });
  return id;
}

const views = (page: Page) =>
  page
    .getByTestId("compare-pane")
    .evaluateAll((panes) => panes.map((one) => (one as HTMLElement).dataset.view));

describe("any two beads", () => {
  it("are ticked in the list, zoomed and moved as one, laid one over the other, and their sizes told apart", async () => {
    const [first, second] = [await bead("tee-undercut", 300), await bead("tee-porosity-soot", 600)];
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await page.goto(server.url);
    await listened(page);
    for (const box of await page.getByRole("checkbox", { name: /^Choose bead/ }).all()) await box.check();
    await page.getByRole("link", { name: /^Compare \d+ and \d+$/ }).click();
    await page.waitForURL(/\/compare\?/);
    await page
      .getByRole("row", { name: /Undercut, longest/ })
      .getByText(/ more| less/)
      .waitFor();
    expect(await views(page)).toEqual(["1.000 0.000 0.000", "1.000 0.000 0.000"]);
    const pane = page.getByTestId("compare-pane").first();
    const box = (await pane.boundingBox())!;
    await page.mouse.move(box.x + box.width * 0.7, box.y + box.height * 0.5);
    await page.mouse.wheel(0, -500);
    await expect.poll(async () => (await views(page))[0]).not.toBe("1.000 0.000 0.000");
    const zoomed = await views(page);
    expect(zoomed[0]).toBe(zoomed[1]);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.5, { steps: 3 });
    await page.mouse.up();
    const moved = await views(page);
    expect(moved[0]).not.toBe(zoomed[0]);
    expect(moved[0]).toBe(moved[1]);
    await shoot(page, "desk-compare-zoomed");
    await page.getByRole("button", { name: "Fit both" }).click();
    await pane.focus();
    await page.keyboard.press("+");
    expect((await views(page))[1]).toMatch(/^1\.600 /);
    await page.keyboard.press("0");
    await page.getByRole("button", { name: "One over the other" }).click();
    await page.getByRole("slider", { name: /^Edge between/ }).fill("30");
    expect((await views(page)).length).toBe(1);
    await page.waitForFunction(() => [...document.images].every((image) => image.complete));
    await shoot(page, "desk-compare-over");
    await page.getByRole("button", { name: "Side by side" }).click();
    await shoot(page, "desk-compare");
    await page.context().close();

    const hand = await (await browser.newContext(phone)).newPage();
    hand.setDefaultTimeout(PATIENT_MS);
    await hand.goto(`${server.url}/beads/${first}`);
    await new Bench(hand).section("Marks");
    await hand.getByRole("link", { name: "Compare it with another bead" }).click();
    await hand.getByRole("heading", { name: /^Which beside bead/ }).waitFor();
    await shoot(hand, "phone-compare-choose");
    await hand.locator(`a[href*="${second}"]`).click();
    await hand.getByTestId("compare-pane").nth(1).waitFor();
    const [above, below] = await Promise.all(
      [0, 1].map(async (i) => (await hand.getByTestId("compare-pane").nth(i).boundingBox())!),
    );
    expect(below!.y).toBeGreaterThanOrEqual(above!.y + above!.height - 1);
    expect(await hand.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    await shoot(hand, "phone-compare");
    await hand.context().close();
  });
});

describe("about twenty of these", () => {
  it("is one mark with a count, asked of what comes in numbers, and a bead begun here stays as it is at its first action", async () => {
    const bench = await Bench.onPhoto(browser, server.url, picture("tee-porosity-soot"), desktop);
    const { page } = bench;
    await bench.tool("Point");
    await bench.click(800, 560);
    await bench.pick("Surface porosity");
    await bench.tool("Move");
    await bench.click(800, 560);
    const card = page.getByTestId("mark-card");
    await card.getByTestId("count-field").getByRole("button", { name: "20", exact: true }).click();
    const list = page.getByRole("list", { name: "Marks on this photo" });
    await list.getByText("about 20 by eye").waitFor();
    await shoot(page, "desk-count");
    // The first action of this window on the server: units are chosen, and photo, tool and zoom stay.
    await page.getByRole("button", { name: "Zoom in" }).click();
    const zoom = await bench.canvas.getAttribute("data-zoom");
    await page.getByRole("radio", { name: "Outline", exact: true }).click();
    await page.getByRole("button", { name: /inch/i }).first().click();
    await page.getByRole("button", { name: "inch", pressed: true }).waitFor();
    expect(await bench.canvas.getAttribute("data-zoom")).toBe(zoom);
    expect(await bench.canvas.getAttribute("data-tool")).toBe("outline");
    expect(new URL(page.url()).pathname).toMatch(/^\/beads\/(?!new)[a-z0-9]+$/);
    await bench.saved();
    await page.reload();
    await list.getByText("about 20 by eye").waitFor();
    await page.context().close();
  });
});
