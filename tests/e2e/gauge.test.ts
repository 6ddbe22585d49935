import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect } from "vitest";
import { handbook } from "../lib/gauge/handbook";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { sharedServer, type SharedServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";
import { itDeep } from "../setup/in-depth";

let server: SharedServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([sharedServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
});

/** The sheet as a spreadsheet copies it: parts down its side, the tries of each person beside each other. */
const sheet = handbook.parts
  .map((_, part) => handbook.values.flatMap((own) => own[part]).join("\t"))
  .join("\n");

const paste = (page: Page, label: string, text: string) =>
  page.getByLabel(label, { exact: true }).evaluate((input, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", pasted);
    input.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);

const fits = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);

describe("a study of a gauge", () => {
  itDeep(
    "is typed in the order of the bench or pasted, says what came of it, and stands at the readings after it",
    async () => {
      const page = await (await browser.newContext(phone)).newPage();
      page.setDefaultTimeout(PATIENT_MS);
      await page.goto(`${server.url}/instruments`);
      await page.getByLabel("Kind").last().selectOption("fillet-gauge");
      await page.getByLabel("Name", { exact: true }).last().fill("Leg gauge 2");
      await page.getByLabel("Smallest step").last().fill("0.1");
      await page.getByRole("button", { name: "Add", exact: true }).click();
      await page.getByRole("link", { name: "Studies: none that counts for readings" }).click();
      await page.getByRole("link", { name: "New study" }).click();

      await page.getByLabel("A 1, part 1", { exact: true }).fill("0.3");
      await page.keyboard.press("Enter");
      await page.keyboard.type("6,x");
      await page.getByText("89 of 90 readings are still to come.").waitFor();
      expect(await page.getByLabel("A 1, part 2", { exact: true }).inputValue()).toBe("6,x");
      // What was typed is there again after a reload.
      await page.reload();
      await page.getByText("89 of 90 readings are still to come.").waitFor();
      expect(await fits(page)).toBe(true);
      await shoot(page, "gauge-sheet-phone");
      await paste(page, "A 1, part 1", sheet);
      await page.getByText("All readings are there.").waitFor();
      expect(await page.getByLabel("C 3, part 10", { exact: true }).inputValue()).toBe("-2.16");
      await page.getByRole("button", { name: "Work it out" }).click();

      await page.getByRole("heading", { name: "Study of Leg gauge 2" }).waitFor();
      // AIAG's figures of this sheet: 0.302 in all, 0.200 again, 0.227 by another; 27.9 %, four groups.
      await page.getByText(/standard uncertainty of 0.302 mm: 0.2 mm from reading again, 0.227 mm/).waitFor();
      await page.getByText("28 % of all variation in the study; it tells 4 groups of parts apart").waitFor();
      expect(await fits(page)).toBe(true);
      await shoot(page, "gauge-study-phone");
      await page.setViewportSize(desktop.viewport);
      await shoot(page, "gauge-study");
      const onPaper = async (names: readonly string[]) => {
        const shown = names.map((name) => page.getByText(name, { exact: true }).first().isVisible());
        return Promise.all(shown);
      };
      const parts = ["Print", "As CSV", "Withdraw it", "Standard deviation"];
      expect(await onPaper(parts)).toEqual([true, true, true, true]);
      await page.emulateMedia({ media: "print" });
      expect(await onPaper(parts)).toEqual([false, false, false, true]);
      await page.emulateMedia({ media: "screen" });

      const { studies } = (await (await page.request.get(`${server.url}/api/gauge-studies`)).json()) as {
        studies: { id: string; figures: { reading: { u: number; k: number } } }[];
      };
      const { u, k } = studies[0]!.figures.reading;
      expect(u).toBeCloseTo(0.302372, 5);
      const csv = await (
        await page.request.get(`${server.url}/api/gauge-studies/${studies[0]!.id}/csv`)
      ).text();
      expect(csv).toContain("C,10,3,-2.16");

      const bench = new Bench(page);
      await bench.newBead(server.url);
      await bench.section("Verdict");
      await page.getByLabel("Judge by").selectOption("iso-5817-c");
      await page.getByLabel("Read with").selectOption({ label: "Leg gauge 2 (no calibration date)" });
      await page.getByLabel("Reading (mm)").fill("6");
      await page.getByRole("button", { name: "Add reading" }).click();
      const carried = `Leg gauge 2; U ${Number((k * u).toPrecision(3))} mm by the study of`;
      await page.getByText(carried).waitFor();
      await bench.saved();
    },
  );
});
