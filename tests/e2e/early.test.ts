import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BeadContent } from "@/lib/assess";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone } from "./support/browser";
import { heldScripts } from "./support/held-scripts";
import { isListenedTo } from "./support/listened";
import { withoutRest } from "./support/no-rest";
import { sharedServer, type SharedServer } from "./support/server";
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

const patient = { timeout: PATIENT_MS };

/** A window of its own, and a bead with nothing on it but a name. */
async function onNamedBead(device: typeof desktop | typeof phone): Promise<{ page: Page; url: string }> {
  const page = await (await browser.newContext(device)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  const bench = new Bench(page);
  await bench.newBead(server.url);
  await page.getByLabel("Run by").fill("Somebody");
  await page.waitForURL(/\/beads\/(?!new)[a-z0-9]+$/);
  await bench.saved();
  return { page, url: page.url() };
}

async function stored(url: string): Promise<BeadContent> {
  const answer = await fetch(url.replace("/beads/", "/api/beads/"));
  return ((await answer.json()) as { content: BeadContent }).content;
}

const setUp = (page: Page) => page.getByRole("region", { name: "Set-up" });

/** The way a hand does it: one key after the other, and no event that a program makes. */
async function typeIn(page: Page, label: RegExp, text: string): Promise<void> {
  await page.getByLabel(label).click();
  await page.keyboard.press("End");
  await page.keyboard.type(text);
}

const caret = (page: Page) =>
  page.evaluate(() => (document.activeElement as HTMLInputElement).selectionStart);

describe("what is done before a part's code is here", () => {
  it("is typed, chosen, ticked and pressed once, when it has come", async () => {
    const { page, url } = await onNamedBead(desktop);
    const failed: string[] = [];
    page.on("pageerror", ({ message }) => failed.push(message));
    const { giveRest } = await withoutRest(page);
    const code = await heldScripts(page);
    await page.goto(url);
    await expect.poll(() => isListenedTo(page), patient).toBe(true);
    code.hold();
    await typeIn(page, /^Voltage(?! knob)/, "16,5");
    await page.keyboard.press("ArrowLeft");
    await page.getByLabel("Joint", { exact: true }).focus();
    await page.keyboard.press("ArrowDown");
    const chosen = await page.getByLabel("Joint", { exact: true }).inputValue();
    expect(chosen).not.toBe("");
    const size = setUp(page)
      .getByRole("group", { name: /^Common sizes for/ })
      .first()
      .getByRole("button")
      .first();
    await size.click();
    await page.getByLabel(/^Voltage(?! knob)/).focus();
    expect(await size.getAttribute("aria-pressed")).toBe("false");
    expect((await stored(url)).setup.volts).toBeNull();

    await Promise.all([code.let(), giveRest()]);
    await expect.poll(async () => (await stored(url)).setup.volts, patient).toBe(16.5);
    await expect.poll(() => size.getAttribute("aria-pressed"), patient).toBe("true");
    expect(await page.getByLabel(/^Voltage(?! knob)/).inputValue()).toBe("16,5");
    expect(await caret(page)).toBe(3);
    await new Bench(page).saved();
    const { setup } = await stored(url);
    expect(setup.joint).not.toBeNull();
    expect(await page.getByLabel("Joint", { exact: true }).inputValue()).toBe(chosen);
    // A press is not made twice: a second one would have taken the size away again.
    expect(await size.getAttribute("aria-pressed")).toBe("true");
    expect(failed).toEqual([]);
    await page.context().close();
  });
});

describe("what is done before anything of a page is here", () => {
  it("on a bead: what is typed, ticked and pressed is there when it has come", async () => {
    const { page, url } = await onNamedBead(phone);
    const code = await heldScripts(page);
    code.hold();
    await page.goto(url, { waitUntil: "commit" });
    await typeIn(page, /^Run by/, " Else");
    await page.getByLabel("Choose photos").setInputFiles(jpeg);
    await page.getByRole("button", { name: "Verdict" }).click();
    expect((await stored(url)).welder).toBe("Somebody");
    await code.let();
    await expect.poll(async () => (await stored(url)).welder, patient).toBe("Somebody Else");
    await page.getByRole("button", { name: "Verdict" }).and(page.locator("[aria-current=true]")).waitFor();
    const bench = new Bench(page);
    await bench.section("Marks");
    await bench.photoShown();
    await page.context().close();
  });

  it("on a list: a bead ticked is chosen, a tick taken off again is none", async () => {
    const { page } = await onNamedBead(desktop);
    const boxes = page.getByRole("checkbox", { name: /^Choose bead \d+$/ });
    const code = await heldScripts(page);
    code.hold();
    await page.goto(server.url, { waitUntil: "commit" });
    await boxes.first().click();
    await boxes.nth(1).click();
    await boxes.nth(1).click();
    expect(await isListenedTo(page)).toBe(false);
    await code.let();
    await page.getByRole("region", { name: "Chosen beads" }).getByText("1 chosen").waitFor();
    expect(await boxes.first().isChecked()).toBe(true);
    expect(await boxes.nth(1).isChecked()).toBe(false);
    await page.context().close();
  });

  it("in its order: a press that lays something out anew does not undo what was typed after it", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const tee = "electrodeClass=E71T-11&electrodeDiameterMm=0.9&joint=tee&position=horizontal&thicknessMm=5";
    await page.goto(`${server.url}/plan?${tee}&inputPower=230V`);
    await page.getByRole("link", { name: "Make a trial of it" }).click();
    await page.getByRole("heading", { name: "New trial" }).waitFor();
    const code = await heldScripts(page);
    code.hold();
    await page.reload({ waitUntil: "commit" });
    const beads = page.getByRole("spinbutton", { name: "Beads", exact: true });
    const usual = await beads.inputValue();
    expect(usual).not.toBe("5");
    await page.getByRole("button", { name: "Travel speed" }).click();
    await page.getByRole("button", { name: "Wire feed" }).click();
    await beads.fill("5");
    await page.getByRole("button", { name: "Make the trial" }).click();
    expect(await isListenedTo(page)).toBe(false);
    await code.let();
    await page
      .getByTestId("next")
      .getByText(/^Run 1 of 5/)
      .waitFor();
    await page.context().close();
  });

  it("a job that is saved then is saved with what was typed, and the page is not loaded anew", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await page.goto(`${server.url}/jobs`);
    await page.getByLabel("Title").fill("Ladder frame");
    await page.getByRole("button", { name: "Make the job" }).click();
    await page.waitForURL(/\/jobs\/[a-z0-9]+$/);
    const url = page.url();
    const code = await heldScripts(page);
    code.hold();
    await page.goto(url, { waitUntil: "commit" });
    await typeIn(page, /^Title/, ", left");
    await page.getByRole("button", { name: "Save the job" }).click();
    expect(page.url()).toBe(url);
    await code.let();
    await page.getByText("Saved.", { exact: true }).waitFor();
    await page.reload();
    expect(await page.getByLabel("Title").inputValue()).toBe("Ladder frame, left");
    await page.context().close();
  });
});
