import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { itDeep } from "../setup/in-depth";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { sharedServer, type SharedServer } from "./support/server";

const root = fileURLToPath(new URL("../..", import.meta.url));
const rendered = path.join(root, "demo-images/set/flat-wide-weave");
/** Places along one toe of the bead, as the renderer laid it. */
const toe = (
  JSON.parse(readFileSync(`${rendered}.json`, "utf8")) as { weld: { leftToePx: [number, number][] } }
).weld.leftToePx;
const onToe = (share: number): [number, number] => toe[Math.round(share * (toe.length - 1))]!;

let server: SharedServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([sharedServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
});

type Spot = { readonly x: number; readonly y: number };

/** Of the mark that was drawn last, as it was saved. */
async function savedPoints(bench: Bench): Promise<readonly Spot[]> {
  await bench.saved();
  const id = bench.page.url().split("/").pop();
  const bead = (await (await fetch(`${server.url}/api/beads/${id}`)).json()) as {
    content: { photos: { drawing: { marks: { shape: { points: Spot[] } }[] } }[] };
  };
  return bead.content.photos[0]!.drawing.marks.at(-1)!.shape.points;
}

const draftPoints = async (bench: Bench) => Number(await bench.canvas.getAttribute("data-draft-points"));

describe("a thumb on a phone", () => {
  it("draws along the toe of a bead, and straight where that is switched off", async () => {
    const bench = await Bench.onPhoto(browser, server.url, `${rendered}.jpg`, phone);
    const { page } = bench;
    await bench.tool("Line");
    const along = page.getByRole("button", { name: "Along the edge" });
    expect(await along.getAttribute("aria-pressed")).toBe("false");
    expect((await along.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    await along.tap();
    for (const share of [0.2, 0.5]) await bench.tap(...onToe(share));
    await expect.poll(() => draftPoints(bench)).toBeGreaterThan(4);
    await bench.tap(...onToe(0.8));
    await expect.poll(() => draftPoints(bench)).toBeGreaterThan(9);
    await shoot(page, "phone-along-the-edge");
    await page.getByRole("button", { name: "Done" }).tap();
    await bench.pick("Undercut");
    const points = await savedPoints(bench);
    // The three places of the thumb are among them, within the half pixel of the screen that a tap is set to.
    const zoom = Number(await bench.canvas.getAttribute("data-zoom"));
    for (const share of [0.2, 0.5, 0.8]) {
      const [x, y] = onToe(share);
      const off = Math.min(...points.map((point) => Math.hypot(point.x - x, point.y - y)));
      expect(off).toBeLessThan(1 / zoom);
    }
    expect(points.length).toBeGreaterThan(9);

    await page.reload();
    // A bead that has something to say opens on that.
    await bench.section("Marks");
    await bench.photoHere();
    await bench.tool("Line");
    expect(await along.getAttribute("aria-pressed")).toBe("true");
    await along.tap();
    for (const share of [0.2, 0.5, 0.8]) await bench.tap(...onToe(share));
    await page.getByRole("button", { name: "Done" }).tap();
    await bench.pick("Undercut");
    await expect.poll(async () => (await savedPoints(bench)).length).toBe(3);
    // For a screen reader, and a thumb that meets no line: the marks as a list of buttons.
    const listed = page.getByRole("list", { name: "Marks on this photo" }).getByRole("button");
    expect(await listed.allInnerTexts()).toEqual([
      expect.stringMatching(/^1\s+Undercut/),
      expect.stringMatching(/^2\s+Undercut/),
    ]);
    await page.context().close();
  });

  itDeep("sees what a HEIC file carries while the photo is taken in", async () => {
    const page = await (await browser.newContext(phone)).newPage();
    const bench = new Bench(page);
    let send: () => void = () => undefined;
    const held = new Promise<void>((resolve) => (send = resolve));
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.route(/\/photos(\?|$)/, (route) => held.then(() => route.continue()));
    await bench.newBead(server.url);
    const before = asked.length;
    await bench.addPhoto(path.join(root, "tests/fixtures/photos/plate.heic"));
    const early = page.getByTestId("early-picture");
    await early.getByRole("img", { name: "Preview of plate.heic" }).waitFor();
    expect(await early.innerText()).toContain("Preview while the photo is taken in");
    // The decoder was asked for now and not before, and is not among what every first visit keeps for later.
    const large = (url: string) => {
      const file = /\/_next\/(static\/[^?"]+\.js)/.exec(url)?.[1];
      return file !== undefined && statSync(path.join(root, ".next", file)).size > 1_000_000;
    };
    expect(asked.slice(0, before).filter(large)).toEqual([]);
    const kept =
      (await (await fetch(`${server.url}/sw.js`)).text()).match(/\/_next\/static\/[^"]+\.js/g) ?? [];
    expect(kept.length).toBeGreaterThan(20);
    expect(kept.filter(large)).toEqual([]);
    await shoot(page, "phone-heic-preview");
    send();
    await bench.photoShown();
    await early.waitFor({ state: "detached" });
    await page.context().close();
  });
});

itDeep(
  "with the keyboard: along the edge, then a point to a tenth of a pixel where the pixels are seen",
  async () => {
    const bench = await Bench.onPhoto(browser, server.url, `${rendered}.jpg`, desktop);
    const { page } = bench;
    await bench.canvas.focus();
    for (const key of ["l", "a", "Space"]) await page.keyboard.press(key);
    for (let i = 0; i < 8; i += 1) await page.keyboard.press("Shift+ArrowRight");
    await page.keyboard.press("Space");
    await expect.poll(() => draftPoints(bench)).toBeGreaterThan(2);
    await shoot(page, "desktop-along-the-edge");
    await page.keyboard.press("Enter");
    await bench.pick("Undercut");
    const drawn = await savedPoints(bench);

    await bench.tool("Move");
    await bench.canvas.focus();
    await page.keyboard.press("]");
    for (let i = 0; i < 16; i += 1) await page.keyboard.press("+");
    const isSmooth = () =>
      bench.canvas
        .locator("canvas")
        .first()
        .evaluate((canvas: HTMLCanvasElement) => canvas.getContext("2d")!.imageSmoothingEnabled);
    await expect.poll(isSmooth).toBe(false);
    await page.keyboard.press("Space");
    for (const key of ["Alt+ArrowRight", "Alt+ArrowRight", "Alt+Shift+ArrowDown"])
      await page.keyboard.press(key);
    await shoot(page, "desktop-close-up");
    await page.keyboard.press("Space");
    await expect.poll(async () => (await savedPoints(bench))[0]!.x - drawn[0]!.x).toBeCloseTo(2, 6);
    const moved = await savedPoints(bench);
    expect(moved[0]!.y - drawn[0]!.y).toBeCloseTo(0.1, 6);
    expect(moved.slice(1)).toEqual(drawn.slice(1));
    await page.keyboard.press("0");
    await expect.poll(isSmooth).toBe(true);
    await page.context().close();
  },
);
