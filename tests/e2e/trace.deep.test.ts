import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Locator } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { PATIENT_MS } from "../setup/patience";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { windows } from "./support/windows";

const set = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set");

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

const Pixel = z.tuple([z.number(), z.number()]);
const Truth = z.object({
  weld: z.object({
    startPx: Pixel,
    endPx: Pixel,
    sections: z.array(z.object({ widthMm: z.number() })),
  }),
  scaleObject: z.object({ keyPoints: z.array(z.object({ px: Pixel, planeMm: Pixel })).min(2) }),
});

const SpotTruth = Truth.pick({ weld: true }).extend({
  imperfections: z.array(
    z.object({ kind: z.string(), outlinePx: z.array(Pixel), sizes: z.record(z.string(), z.number()) }),
  ),
});

const middleOf = (outline: readonly (readonly [number, number])[]): readonly [number, number] => [
  outline.reduce((sum, [x]) => sum + x, 0) / outline.length,
  outline.reduce((sum, [, y]) => sum + y, 0) / outline.length,
];

/** Seen whole as the page stands, under nothing: no scrolling leads to it. */
async function inReach(button: Locator) {
  const isSeen = await button.evaluate((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    return [
      [left + 2, top + 2],
      [right - 2, bottom - 2],
      [(left + right) / 2, (top + bottom) / 2],
    ].every(([x, y]) => element.contains(document.elementFromPoint(x!, y!)));
  });
  expect(isSeen).toBe(true);
}

describe("a bead that reads itself", () => {
  it.each(windows)(
    "is proposed along its weld line and kept once accepted, on a %s",
    async (name, window) => {
      // Read at full size: on the set's picture the bead is wide enough.
      const { weld } = Truth.parse(
        JSON.parse(readFileSync(path.join(set, "crack-along-across.json"), "utf8")),
      );
      const page = await (await browser.newContext(window)).newPage();
      page.setDefaultTimeout(PATIENT_MS);
      const fetched: string[] = [];
      page.on("request", (request) => fetched.push(new URL(request.url()).pathname));
      const bench = new Bench(page);
      await bench.newBead(server.url);
      await bench.addPhoto(path.join(set, "crack-along-across.jpg"));
      await bench.photoShown();
      await bench.tool("Scale");
      await page.getByRole("button", { name: "Find the printed strip" }).click();
      await page
        .getByTestId("scale-note")
        .getByText(/Scale set/)
        .waitFor();
      // Nothing of the reader is fetched before a bead is read.
      expect(fetched.filter((at) => at.startsWith("/reader/"))).toEqual([]);
      await bench.tool("Weld");
      for (const end of [weld.startPx, weld.endPx]) await bench[name === "phone" ? "tap" : "click"](...end);
      await page.getByRole("button", { name: "Done" }).click();
      const accept = page.getByRole("button", { name: "Accept these toes" });
      await accept.waitFor();
      expect(fetched.filter((at) => at.startsWith("/reader/")).length).toBeGreaterThan(1);
      await page.getByText("counts for nothing until accepted").waitFor();
      await shoot(page, `trace-proposed-${name}`);
      await accept.click();
      await page.getByText("Read off the photo and accepted").waitFor();
      const width = await page.getByTestId("trace").locator("dd").first().textContent();
      const [, value, spread] = /(\d+(?:\.\d+)?) ± (\d+(?:\.\d+)?) mm/.exec(width ?? "") ?? [];
      const inner = weld.sections.slice(8, -8);
      const trueMm = inner.reduce((sum, { widthMm }) => sum + widthMm, 0) / inner.length;
      expect(Math.abs(Number(value) - trueMm)).toBeLessThanOrEqual(Number(spread));
      // It is drawn even, so nothing is offered to be marked.
      await page.getByText("no more than the reading scatters").waitFor();
      expect(await page.getByRole("button", { name: /uneven width/ }).count()).toBe(0);
      await bench.saved();
      await page.reload();
      if (name === "phone") await bench.section("Marks");
      await page.getByText("Read off the photo and accepted").waitFor();
      await page.getByTestId("trace").scrollIntoViewIfNeeded();
      await shoot(page, `trace-accepted-${name}`);
    },
  );

  it("is found without a press on a phone: three taps from the photo to the sheet", async () => {
    const { weld } = Truth.parse(JSON.parse(readFileSync(path.join(set, "crack-along-across.json"), "utf8")));
    const page = await (await browser.newContext(phone)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await bench.newBead(server.url, { looks: true });
    await bench.addPhoto(path.join(set, "crack-along-across.jpg"));
    await bench.photoShown();
    const both = page.getByRole("button", { name: "Accept scale and weld line" });
    await both.waitFor();
    await inReach(both);
    await shoot(page, "found-proposed-phone");
    await both.tap();
    const toes = page.getByRole("button", { name: "Accept these toes" });
    await toes.waitFor();
    await inReach(toes);
    await toes.tap();
    await page.getByText("Read off the photo and accepted").waitFor();
    await bench.saved();
    await page.getByRole("link", { name: "Sheet" }).tap();
    await page.waitForURL(/\/sheet$/);
    const row = page.locator("div").filter({ has: page.locator("dt", { hasText: "Mean width" }) });
    const said = await row.last().locator("dd").textContent();
    const [, value, spread] = /(\d+(?:\.\d+)?) ± (\d+(?:\.\d+)?) mm/.exec(said ?? "") ?? [];
    const inner = weld.sections.slice(8, -8);
    const trueMm = inner.reduce((sum, { widthMm }) => sum + widthMm, 0) / inner.length;
    expect(Math.abs(Number(value) - trueMm)).toBeLessThanOrEqual(Number(spread));
    await row.last().scrollIntoViewIfNeeded();
    await shoot(page, "found-on-sheet-phone");
  });

  it("is given its scale by a rule or a disc that lies beside it, the disc once somebody said its width", async () => {
    const page = await (await browser.newContext(phone)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    for (const [name, words, press] of [
      ["restart-cluster", "A rule was found", /^Accept (the )?scale/],
      ["hard-cracks", "A round disc was found", /^Accept (the )?disc/],
    ] as const) {
      const bench = new Bench(page);
      await bench.newBead(server.url, { looks: true });
      await bench.addPhoto(path.join(set, `${name}.jpg`));
      await bench.photoShown();
      await page.getByTestId("found").getByText(words).waitFor();
      const accept = page.getByRole("button", { name: press });
      await accept.waitFor();
      await inReach(accept);
      await shoot(page, `found-${name}-phone`);
      await accept.tap();
      if (name === "hard-cracks") {
        const size = page.getByRole("dialog", { name: "How wide is the disc?" }).getByRole("textbox");
        await size.fill("20 mm");
        await size.press("Enter");
      }
      await page
        .getByTestId("scale-note")
        .getByText(/Scale set/)
        .waitFor();
    }
  });

  it.each(windows)(
    "suggests holes and spatter once that is switched on; a ring counts for nothing until it is tapped, on a %s",
    async (name, window) => {
      const { weld, imperfections } = SpotTruth.parse(
        JSON.parse(readFileSync(path.join(set, "corner-linear-pores.json"), "utf8")),
      );
      const page = await (await browser.newContext(window)).newPage();
      page.setDefaultTimeout(PATIENT_MS);
      const fetched: string[] = [];
      page.on("request", (request) => fetched.push(new URL(request.url()).pathname));
      const isFetched = () => fetched.some((at) => at.startsWith("/reader/spots-"));
      const bench = new Bench(page);
      await bench.newBead(server.url);
      await bench.addPhoto(path.join(set, "corner-linear-pores.jpg"));
      await bench.photoShown();
      await bench.tool("Weld");
      const press = name === "phone" ? "tap" : "click";
      for (const end of [weld.startPx, weld.endPx]) await bench[press](...end);
      await page.getByRole("button", { name: "Done" }).click();
      await page.getByRole("button", { name: "Accept these toes" }).click();
      const panel = page.getByTestId("spots");
      const on = panel.getByRole("checkbox", { name: "Suggest holes and spatter" });
      expect(await on.isChecked()).toBe(false);
      expect(isFetched()).toBe(false);
      await on.check();
      await panel.getByText(/\d+ suggested: the dashed rings/).waitFor();
      expect(isFetched()).toBe(true);
      await panel.getByText(/never measured on photographs/).waitFor();
      const count = async () => Number(/(\d+) suggested/.exec((await panel.textContent()) ?? "")?.[1] ?? 0);
      const suggested = await count();
      expect(suggested).toBeGreaterThan(3);
      expect(await bench.canvas.getAttribute("data-marks")).toBe("0");
      await bench.canvas.scrollIntoViewIfNeeded();
      await shoot(page, `spots-suggested-${name}`);
      // The largest pores: a tap on one that has a ring makes it a mark, and its ring goes.
      const pores = imperfections
        .filter(({ kind }) => kind === "surface-porosity")
        .toSorted((a, b) => b.sizes.diameterMm! - a.sizes.diameterMm!);
      const [x, y] = middleOf(pores[0]!.outlinePx);
      await bench[press](x, y);
      await expect.poll(() => bench.canvas.getAttribute("data-marks")).toBe("1");
      expect(await count()).toBe(suggested - 1);
      // The list does the same without the photo, and dismissing leaves no mark.
      await panel.getByText("All suggestions, one by one").click();
      await panel
        .getByRole("button", { name: /^Mark (hole|spatter)/ })
        .first()
        .press("Enter");
      await expect.poll(() => bench.canvas.getAttribute("data-marks")).toBe("2");
      await panel
        .getByRole("button", { name: /^Dismiss (hole|spatter)/ })
        .first()
        .click();
      await expect.poll(count).toBe(suggested - 3);
      await panel.getByText("All suggestions, one by one").scrollIntoViewIfNeeded();
      await shoot(page, `spots-list-${name}`);
      await panel.getByRole("button", { name: "Dismiss all suggestions" }).click();
      await panel.getByText("Nothing more is suggested").waitFor();
      expect(await bench.canvas.getAttribute("data-marks")).toBe("2");
      await bench.saved();
    },
  );

  it("offers the worst stretch of an uneven bead to be marked, and only then it is evidence", async () => {
    const { weld, scaleObject } = Truth.parse(
      JSON.parse(readFileSync(path.join(set, "vertical-up-uneven.json"), "utf8")),
    );
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await bench.newBead(server.url);
    await bench.addPhoto(path.join(set, "vertical-up-uneven.jpg"));
    await bench.photoShown();
    const [a, b] = [scaleObject.keyPoints[0]!, scaleObject.keyPoints.at(-1)!];
    const lengthMm = Math.hypot(a.planeMm[0] - b.planeMm[0], a.planeMm[1] - b.planeMm[1]);
    await bench.setScale(a.px, b.px, `${lengthMm.toFixed(2)} mm`);
    await bench.tool("Weld");
    for (const end of [weld.startPx, weld.endPx]) await bench.click(...end);
    await page.getByRole("button", { name: "Done" }).click();
    await page.getByRole("button", { name: "Accept these toes" }).click();
    await page.getByRole("button", { name: "Mark those 25 mm as uneven width" }).click();
    expect(await bench.canvas.getAttribute("data-marks")).toBe("1");
    await bench.saved();
  });
});
