import type { Browser, BrowserContextOptions, Locator, Page } from "playwright-core";
import { expect } from "vitest";
import { PATIENT_MS } from "../../setup/patience";
import { listened } from "./listened";

/** Drives the workbench the way a person does: photo pixels in, taps and keys out. */
export class Bench {
  constructor(readonly page: Page) {}

  get canvas(): Locator {
    return this.page.getByTestId("bead-canvas");
  }

  /** A window of its own on a new bead with this photo. */
  static async onPhoto(
    browser: Browser,
    url: string,
    file: string,
    device: BrowserContextOptions,
  ): Promise<Bench> {
    const page = await (await browser.newContext(device)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await bench.newBead(url);
    await bench.addPhoto(file);
    await bench.photoShown();
    return bench;
  }

  /** New photos are looked at without a press only where a test is about that: it takes the processor for seconds. */
  async newBead(url: string, { looks = false } = {}): Promise<void> {
    await this.page.goto(url);
    await this.page.evaluate(
      (on) => localStorage.setItem("toeline-looks-by-itself", on),
      looks ? "yes" : "no",
    );
    await this.page.getByRole("link", { name: "New bead" }).click();
    await this.page.waitForURL(/\/beads\/new$/);
    await this.page.getByLabel("Choose photos").waitFor({ state: "attached" });
  }

  async addPhoto(file: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
    await this.page.getByLabel("Choose photos").setInputFiles(file);
  }

  /** The photo is shown sharp, and everything stored: the bead has an address of its own. */
  async photoShown(): Promise<void> {
    await this.photoHere();
    await this.page.waitForURL(/\/beads\/(?!new)[a-z0-9]+$/);
    await this.page.getByRole("list", { name: "Photos on their way" }).waitFor({ state: "detached" });
    // What is said about it goes out after it: whoever writes past the screen before that would collide.
    await this.saved();
  }

  /** The photo is shown sharp, wherever it is kept. */
  async photoHere(): Promise<void> {
    await this.page
      .waitForSelector('[data-testid="bead-canvas"][data-photo-state="sharp"]', { timeout: PATIENT_MS })
      .catch(async () => {
        // Whatever else stands there says more than that the photo is missing.
        const said = await this.page.locator("body").innerText();
        throw new Error(`no sharp photo at ${this.page.url()}, which says: ${said.slice(0, 500)}`);
      });
  }

  /** Where a photo pixel lies on the screen now. */
  async at(x: number, y: number): Promise<{ x: number; y: number }> {
    const box = await this.canvas.boundingBox();
    const zoom = Number(await this.canvas.getAttribute("data-zoom"));
    const panX = Number(await this.canvas.getAttribute("data-pan-x"));
    const panY = Number(await this.canvas.getAttribute("data-pan-y"));
    if (!box) throw new Error("the canvas is not on the screen");
    return { x: box.x + panX + x * zoom, y: box.y + panY + y * zoom };
  }

  async tool(name: "Move" | "Point" | "Line" | "Outline" | "Scale" | "Weld"): Promise<void> {
    await this.page.getByRole("radio", { name, exact: true }).click();
  }

  async click(x: number, y: number): Promise<void> {
    const spot = await this.at(x, y);
    await this.page.mouse.click(spot.x, spot.y);
  }

  async tap(x: number, y: number): Promise<void> {
    const spot = await this.at(x, y);
    await this.page.touchscreen.tap(spot.x, spot.y);
  }

  async setScale(
    a: [number, number],
    b: [number, number],
    length: string,
    press: "click" | "tap" = "click",
  ): Promise<void> {
    await this.tool("Scale");
    await this[press](...a);
    await this[press](...b);
    await this.page.getByRole("dialog", { name: "How far apart are the two points?" }).waitFor();
    await this.page.getByLabel(/^Length/).fill(length);
    await this.page.getByRole("button", { name: "Set scale" }).click();
    await this.page
      .getByTestId("scale-note")
      .getByText(/Scale set/)
      .waitFor();
  }

  async drawLine(
    points: readonly [number, number][],
    imperfection: string,
    press: "click" | "tap" = "click",
  ): Promise<void> {
    await this.tool("Line");
    for (const point of points) await this[press](...point);
    await this.page.getByRole("button", { name: "Done" }).click();
    await this.pick(imperfection);
  }

  async pick(imperfection: string): Promise<void> {
    const dialog = this.page.getByRole("dialog", { name: "What is it?" });
    await dialog.waitFor();
    await dialog
      .getByRole("button", { name: new RegExp(imperfection) })
      .first()
      .click();
    await dialog.waitFor({ state: "hidden" });
  }

  async section(name: "Marks" | "Set-up" | "Causes" | "Verdict"): Promise<void> {
    await this.page
      .getByRole("navigation", { name: "Parts of this bead" })
      .getByRole("button", { name })
      .click();
  }

  /** Takes the first example set-up whose name fits, whatever it is called today. */
  async exampleSetup(wanted: RegExp): Promise<void> {
    const list = this.page.getByLabel("Example set-ups");
    const names = await list.locator("option").allInnerTexts();
    const name = names.find((one) => wanted.test(one));
    if (!name) throw new Error(`no example fits ${String(wanted)}: ${names.join("; ")}`);
    await list.selectOption({ label: name });
  }

  /** Answers what is asked until a change stands out, as somebody would who looked and found the first thing wrong. */
  async untilChange(): Promise<void> {
    const change = this.page.getByTestId("first-change");
    const question = this.page.getByTestId("settling").locator("[data-check]").first();
    // What was drawn or pressed just now may still change what is asked.
    await this.saved();
    await change.or(question).first().waitFor();
    for (let asked = 0; asked < 4 && !(await change.isVisible()); asked += 1) {
      const id = await question.getAttribute("data-check");
      const same = this.page.locator(`[data-testid="settling"] [data-check="${id}"]`);
      await same.getByRole("button").first().click();
      await this.page.locator(`[data-answered="${id}"]`).waitFor();
      // The answer stands at once, what follows from it a moment later: until then the old questions are still there.
      await same.waitFor({ state: "detached" });
      await change.or(question).first().waitFor();
    }
    await change.waitFor();
  }

  async saved(): Promise<void> {
    await listened(this.page);
    await this.page.waitForSelector('[data-testid="save-state"][data-state="saved"]');
    // A change made just now has not started saving yet: wait out the quiet time, then look again.
    await this.page.waitForTimeout(700);
    await this.page.waitForSelector('[data-testid="save-state"][data-state="saved"]');
  }

  async marks(): Promise<number> {
    return Number(await this.canvas.getAttribute("data-marks"));
  }

  async expectMarks(count: number): Promise<void> {
    await expect.poll(() => this.marks()).toBe(count);
  }
}
