import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { desktop, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { windows } from "./support/windows";

const jpeg = path.join(
  fileURLToPath(new URL("../..", import.meta.url)),
  "demo-images/set/tee-porosity-soot.jpg",
);

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** Three pores, the first named, the others the same without asking. */
async function threePores(bench: Bench, press: "click" | "tap"): Promise<void> {
  await bench.tool("Point");
  await bench[press](600, 560);
  await bench.page.getByLabel("Name the next ones the same without asking").check();
  await bench.pick("Surface porosity");
  await bench[press](800, 570);
  await bench[press](1000, 580);
  await bench.page.waitForSelector('[data-testid="bead-canvas"][data-marks="3"]');
}

describe("many marks", () => {
  it("are chosen together, named the same, taken away and brought back in one step each", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await threePores(bench, "click");
    const list = page.getByRole("list", { name: "Marks on this photo" });
    await page.getByRole("button", { name: "Choose several" }).click();
    const chosen = page.getByRole("group", { name: "Marks chosen together" });
    await list.getByRole("button").nth(0).click();
    await list.getByRole("button").nth(2).click();
    await chosen.getByText("2 chosen").waitFor();
    await shoot(page, "desk-several");
    await chosen.getByRole("button", { name: "Name them the same" }).click();
    const asked = page.getByRole("dialog", { name: "What are these 2?" });
    await asked.getByRole("searchbox").fill("splatter");
    await asked.getByRole("button", { name: /^Spatter/ }).click();
    await expect.poll(() => list.getByText("Spatter").count()).toBe(2);
    expect(await list.getByText("Surface porosity").count()).toBe(1);

    await page.getByRole("button", { name: "Choose several" }).click();
    await chosen.getByRole("button", { name: "All 3" }).click();
    await chosen.getByRole("button", { name: "Delete 3" }).click();
    await page.waitForSelector('[data-testid="bead-canvas"][data-marks="0"]');
    await page.getByRole("button", { name: "Undo" }).click();
    await page.waitForSelector('[data-testid="bead-canvas"][data-marks="3"]');
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => list.getByText("Surface porosity").count()).toBe(3);
    await page.context().close();
  });

  it.each(windows)(
    "on a %s the photo fills the screen, labels go short and off, and its light changes for the eye",
    async (name, device, press) => {
      const bench = await Bench.onPhoto(browser, server.url, jpeg, device);
      const { page } = bench;
      await threePores(bench, press);
      await bench.tool("Move");
      const bar = page.getByRole("group", { name: "How the photo is shown" });
      const tags = bar.getByRole("button", { name: /abels|umbers/ });
      for (const said of ["Labels", "Numbers", "No labels"]) {
        expect((await tags.innerText()).trim()).toBe(said);
        await shoot(page, `${name}-tags-${said.replace(" ", "-").toLowerCase()}`);
        await tags.click();
      }

      await bar.getByRole("button", { name: "Photo over the whole screen" }).click();
      const size = page.viewportSize()!;
      await expect
        .poll(async () => {
          const box = (await page.locator("[data-full]").boundingBox())!;
          return [box.x, box.y, box.width, box.height];
        })
        .toEqual([0, 0, size.width, size.height]);
      // Over everything: what is under the middle of each edge belongs to the board.
      const over = await page.evaluate(() => {
        const { innerWidth: w, innerHeight: h } = window;
        const spots = [
          [w / 2, 2],
          [w / 2, h - 2],
          [2, h / 2],
          [w - 2, h / 2],
        ] as const;
        return spots.map(
          ([x, y]) => document.elementFromPoint(x, y)?.closest("[data-full]") instanceof HTMLElement,
        );
      });
      expect(over).toEqual([true, true, true, true]);
      await shoot(page, `${name}-full-screen`);

      await bar.getByRole("button", { name: "Light and contrast of the view" }).click();
      await page.getByLabel("Brightness").fill("2");
      await page.getByLabel("Local contrast").fill("1");
      await page.getByText("For the eye only. Sizes").waitFor();
      const filter = () =>
        page.evaluate(
          () => document.querySelector<HTMLElement>('[data-testid="bead-canvas"] canvas')!.style.filter,
        );
      await expect.poll(filter).toContain("brightness(2)");
      expect(await filter()).toContain("photo-detail");
      await shoot(page, `${name}-light`);
      await page.emulateMedia({ media: "print" });
      await page.getByText("Printed as taken").waitFor();
      expect(
        await page.evaluate(
          () => getComputedStyle(document.querySelector('[data-testid="bead-canvas"] canvas')!).filter,
        ),
      ).toBe("none");
      await page.emulateMedia({ media: "screen" });
      await page.getByRole("button", { name: "As taken" }).click();
      await expect.poll(filter).toBe("");
      await page.keyboard.press("Escape");
      await bar.getByRole("button", { name: "Leave the full screen" }).click();
      expect(await page.locator("[data-full]").count()).toBe(0);
      await page.context().close();
    },
  );
});
