import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, CDPSession } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, openBrowser, phone, shoot } from "./support/browser";
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

/** Of a slow machine. */
const patient = { timeout: PATIENT_MS };

type Spot = readonly [number, number];

/** Fingers on the glass, page pixels, one list of places a moment; a longer list is another finger coming down. */
async function fingers(cdp: CDPSession, moments: readonly (readonly Spot[])[]): Promise<void> {
  for (const [i, spots] of moments.entries()) {
    await cdp.send("Input.dispatchTouchEvent", {
      type: spots.length > (moments[i - 1]?.length ?? 0) ? "touchStart" : "touchMove",
      touchPoints: spots.map(([x, y], id) => ({ x, y, id })),
    });
  }
  await cdp.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
}

async function openPhone(): Promise<{ bench: Bench; cdp: CDPSession; said: () => Promise<string> }> {
  const bench = await Bench.onPhoto(browser, server.url, jpeg, phone);
  const { page } = bench;
  const said = async () => (await page.getByTestId("canvas-said").innerText()).trim();
  return { bench, cdp: await page.context().newCDPSession(page), said };
}

/** The shape of the first mark as it was saved. */
async function savedShape(bench: Bench): Promise<{ radius?: number; points?: unknown[] }> {
  await bench.saved();
  const id = bench.page.url().split("/").pop();
  const bead = (await (await fetch(`${server.url}/api/beads/${id}`)).json()) as {
    content: { photos: { drawing: { marks: { shape: { radius?: number; points?: unknown[] } }[] } }[] };
  };
  return bead.content.photos[0]!.drawing.marks[0]!.shape;
}

describe("a thumb in a glove, 390 x 844", () => {
  it("draws a line, pinches in between, takes a point back and another out", async () => {
    const { bench, cdp, said } = await openPhone();
    const { page } = bench;
    await bench.tool("Line");
    for (const x of [500, 650, 800]) await bench.tap(x, 600);
    await expect.poll(said, patient).toBe("Point placed, 3 of line");

    const zoom = Number(await bench.canvas.getAttribute("data-zoom"));
    const { x, y } = await bench.at(600, 620);
    const apart = (half: number): readonly Spot[] => [
      [x - half, y],
      [x + half, y],
    ];
    // The first finger comes a moment before the second, as on a real hand.
    await fingers(cdp, [[[x - 30, y]], apart(30), apart(45), apart(60)]);
    const zoomNow = async () => Number(await bench.canvas.getAttribute("data-zoom"));
    await expect.poll(zoomNow, patient).toBeGreaterThan(zoom * 1.5);
    expect(await said()).toBe("Point placed, 3 of line");

    await page.getByRole("group", { name: "Zoom" }).getByLabel("Fit the whole photo").tap();
    await page.getByRole("group", { name: "Undo and redo" }).getByRole("button", { name: "Undo" }).tap();
    await expect.poll(said, patient).toBe("Point placed, 2 of line");
    for (const px of [800, 950]) await bench.tap(px, 610);
    await page.getByRole("button", { name: "Done" }).tap();
    await bench.pick("Undercut");
    await expect.poll(said, patient).toMatch(/^Undercut 1.*, placed$/);

    await bench.tool("Move");
    await bench.tap(650, 600);
    await expect.poll(said, patient).toBe("Point 2 of 4");
    const remove = page.getByRole("button", { name: "Remove point 2" });
    expect((await remove.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    await shoot(page, "phone-remove-point");
    await remove.tap();
    await expect.poll(said, patient).toBe("Point 2 removed, 3 left");
    expect((await savedShape(bench)).points).toHaveLength(3);
    await page.context().close();
  });

  itDeep("gives a pore its size, and then another", async () => {
    const { bench, cdp } = await openPhone();
    await bench.tool("Point");
    const middle = await bench.at(700, 600);
    const drag = (...way: Spot[]) =>
      fingers(
        cdp,
        way.map((spot) => [spot]),
      );
    // Chromium cancels a touch that a machine under load answers too late; a thumb would simply draw it again.
    const asked = bench.page.getByRole("dialog", { name: "What is it?" });
    for (let tries = 0; tries < 3 && !(await asked.isVisible()); tries += 1) {
      await drag([middle.x, middle.y], [middle.x + 8, middle.y], [middle.x + 14, middle.y]);
      await asked.waitFor({ timeout: 30_000 }).catch(() => undefined);
    }
    await bench.pick("Surface porosity");
    const zoom = Number(await bench.canvas.getAttribute("data-zoom"));
    const drawn = (await savedShape(bench)).radius;
    expect(drawn).toBeCloseTo(14 / zoom, 0);

    await bench.tool("Move");
    const handle = { x: middle.x + 44, y: middle.y };
    await shoot(bench.page, "phone-pore-handle");
    // A cancelled drag leaves the pore as it was: the thumb tries again.
    for (let tries = 0; tries < 5 && (await savedShape(bench)).radius === drawn; tries += 1)
      await drag([handle.x, handle.y], [handle.x - 5, handle.y], [handle.x - 10, handle.y]);
    expect((await savedShape(bench)).radius).toBeCloseTo(4 / zoom, 0);
    await bench.page.context().close();
  });
});
