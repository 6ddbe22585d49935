import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BeadContent } from "@/lib/assess";
import { newMark } from "@/lib/marks";
import { emptyRunSetup, type RunSetup } from "@/lib/setup";
import type { ImperfectionId } from "@/lib/trade";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { withoutRest } from "./support/no-rest";
import { sharedServer, type SharedServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";
import { inDepth } from "../setup/in-depth";

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
const small = { ...phone, viewport: { width: 360, height: 640 } };

/** Writes a set-up and marks into the open bead, as another window would, and opens it again. */
async function record(page: Page, setup: Partial<RunSetup>, seen: readonly ImperfectionId[]): Promise<void> {
  const api = page.url().replace("/beads/", "/api/beads/");
  const { revision, content } = (await (await page.request.get(api)).json()) as {
    revision: number;
    content: BeadContent;
  };
  const marks = seen.map((id, i) =>
    newMark(`m${i}`, id, { kind: "point", at: { x: 500 + 90 * i, y: 600 }, radius: null }),
  );
  const photos = content.photos.map((photo) => ({ ...photo, drawing: { ...photo.drawing, marks } }));
  const answer = await page.request.put(api, {
    data: { basedOn: revision, content: { ...content, photos, setup: { ...emptyRunSetup, ...setup } } },
  });
  expect(answer.status()).toBe(200);
  await page.goto(page.url());
}

/** Whether the whole of it can be seen above the bar under the thumb, without a scroll. */
async function expectInOneScreen(page: Page, what: Locator): Promise<void> {
  await what.waitFor();
  const box = (await what.boundingBox())!;
  const bar = (await page.getByRole("navigation", { name: "Parts of this bead" }).boundingBox())!;
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
  expect(box.x).toBeGreaterThanOrEqual(0);
  expect(box.x + box.width).toBeLessThanOrEqual(page.viewportSize()!.width);
  expect(box.y).toBeGreaterThanOrEqual(0);
  expect(box.y + box.height).toBeLessThanOrEqual(bar.y);
}

const wire = { process: "FCAW-S", electrodeClass: "E71T-11", electrodeDiameterMm: 0.9 } as const;
const gasWire = {
  process: "FCAW-G",
  electrodeClass: "E71T-1C",
  electrodeDiameterMm: 1.2,
  gas: "CO2",
} as const;
const tee = { joint: "tee", position: "horizontal", thicknessMm: 8 } as const;

describe("from a photo to the answer on a phone", () => {
  it("takes six taps, and a question that settles it one more", async () => {
    const page = await (await browser.newContext(phone)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    let taps = 0;
    const tap = async (what: Locator) => {
      taps += 1;
      await what.tap();
    };
    await page.goto(server.url);
    await tap(page.getByRole("link", { name: "New bead" }));
    await page.waitForURL(/\/beads\/[a-z0-9]+$/);
    const chosen = page.waitForEvent("filechooser");
    await tap(page.getByRole("button", { name: "Choose or drop photos" }));
    await (await chosen).setFiles(jpeg);
    const bench = new Bench(page);
    await bench.photoShown();
    await tap(page.getByRole("radio", { name: "Point", exact: true }));
    taps += 1;
    await bench.tap(700, 600);
    const asked = page.getByRole("dialog", { name: "What is it?" });
    await tap(asked.getByRole("button", { name: /Undercut/ }).first());
    const part = page.getByRole("navigation", { name: "Parts of this bead" });
    const causes = part.getByRole("button", { name: /Causes.*an answer is ready/ });
    await causes.waitFor();
    await shoot(page, "phone-answer-ready");
    await tap(causes);
    expect(taps).toBe(6);
    const settling = page.getByTestId("settling");
    await expectInOneScreen(page, settling);
    await shoot(page, "phone-settling");
    expect(await settling.locator("[data-check]").count()).toBe(2);

    const before = await page.getByTestId("causes").innerText();
    const question = settling.locator("[data-check]").first();
    const id = await question.getAttribute("data-check");
    await question.getByRole("button").first().tap();
    await expect.poll(() => page.getByTestId("causes").innerText(), patient).not.toBe(before);
    await page.locator(`[data-answered="${id}"]`).waitFor();
    await shoot(page, "phone-settled");
    await page.getByRole("button", { name: /^Take back/ }).tap();
    await expect.poll(() => page.getByTestId("causes").innerText(), patient).toBe(before);
    await page.context().close();
  });
});

const beads: readonly [
  name: string,
  setup: Partial<RunSetup>,
  seen: readonly ImperfectionId[],
  testId: string,
][] = [
  ["record", { ...wire, ...tee, polarity: "DCEP" }, ["spatter", "surface-porosity"], "first-change"],
  [
    "volts",
    { ...gasWire, ...tee, wireFeedMPerMin: 8, volts: 31, ctwdMm: 19, travelSpeedMmPerMin: 420 },
    ["undercut"],
    "first-change",
  ],
  ["travel", { process: "FCAW-S" }, ["undercut", "convex-bead"], "first-change"],
  [
    "position",
    {
      ...gasWire,
      joint: "tee",
      position: "overhead",
      transfer: "spray",
      process: "GMAW",
      electrodeClass: "ER70S-6",
      gas: "90Ar-10CO2",
    },
    ["sagging"],
    "first-change",
  ],
  ["coating", { ...wire, ...tee, surface: "galvanised" }, ["surface-porosity"], "first-change"],
  ["ask", {}, ["undercut"], "settling"],
  ["inspector", { ...wire, ...tee }, ["crater-crack"], "inspector-first"],
];

/** The ordinary run takes the smaller, the deep one both. */
const sizes = [
  { size: "390 x 844", device: phone },
  { size: "360 x 640", device: small },
];

describe.each(inDepth(sizes.slice(1), sizes))("a bead with an answer, $size", ({ size, device }) => {
  it("opens on it, the whole of it in one screen", async () => {
    const { page } = await Bench.onPhoto(browser, server.url, jpeg, device);
    for (const [name, setup, seen, testId] of beads) {
      await record(page, setup, seen);
      await page.getByTestId(testId).waitFor();
      await shoot(page, `answer-${name}-${size.replaceAll(" ", "")}`);
      await expectInOneScreen(page, page.getByTestId(testId));
      expect(await page.getByTestId(testId).innerText()).not.toMatch(/%|check your copy/i);
    }
    await page.context().close();
  });
});

describe("a workbench whose code for the answer has not come", () => {
  it("stands with the answer that the server wrote, lets names be typed, and takes presses once it has come", async () => {
    const { page: made } = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    await record(made, {}, ["undercut"]);
    const url = made.url();
    await made.context().close();
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const failed: string[] = [];
    page.on("pageerror", ({ message }) => failed.push(message));
    const { giveRest } = await withoutRest(page);
    await page.goto(url);
    await new Bench(page).photoHere();
    const causes = page.getByTestId("causes");
    const written = await causes.innerText();
    const scale = await page.getByTestId("scale-note").innerText();
    const by = page.getByLabel("Run by");
    await by.fill("Somebody else");
    await page.getByText("Saved", { exact: true }).waitFor();
    expect(await by.inputValue()).toBe("Somebody else");
    expect(await causes.innerText()).toBe(written);
    expect(await page.getByTestId("scale-note").innerText()).toBe(scale);
    expect(await page.getByRole("list", { name: "Marks on this photo" }).getByRole("listitem").count()).toBe(
      1,
    );

    // An answer that is older than what is on the photo is not shown, and that is said.
    const behind = page.getByText("Something was changed since this was worked out");
    expect(await behind.count()).toBe(0);
    expect(await causes.isVisible()).toBe(true);
    await page.getByRole("radio", { name: "Weld", exact: true }).click();
    const box = (await new Bench(page).canvas.boundingBox())!;
    await page.mouse.click(box.x + 0.3 * box.width, box.y + 0.5 * box.height);
    await page.mouse.click(box.x + 0.6 * box.width, box.y + 0.5 * box.height);
    await page.getByRole("button", { name: "Done" }).click();
    await behind.first().waitFor();
    expect(await causes.isVisible()).toBe(false);

    await giveRest();
    await behind.first().waitFor({ state: "detached" });
    expect(await causes.isVisible()).toBe(true);
    const worked = await causes.innerText();
    const question = page.getByTestId("settling").locator("[data-check]").first().getByRole("button").first();
    await expect
      .poll(async () => {
        if (await question.isVisible()) await question.click();
        return causes.innerText();
      }, patient)
      .not.toBe(worked);
    expect(failed).toEqual([]);
    await page.context().close();
  });
});

describe("the next bead", () => {
  it("keeps its change on top and its planned set-up until somebody says otherwise; every press can be undone", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, phone);
    const { page } = bench;
    await record(page, { ...wire, ...tee, polarity: "DCEP", volts: 17 }, ["spatter", "surface-porosity"]);
    const first = page.url();
    await page.getByRole("button", { name: "Run it again" }).tap();
    await page.waitForURL((url) => url.href !== first && /\/beads\//.test(url.href));
    const yours = page.getByTestId("your-change");
    await expectInOneScreen(page, yours);
    expect(await yours.innerText()).toMatch(/From DCEP to DCEN/);
    await shoot(page, "phone-your-change");

    // Another bead in between has another set-up; "same as the last one" would take it.
    const next = page.url();
    await bench.section("Set-up");
    const volts = page.getByLabel(/^Voltage(?! knob)/);
    expect(await volts.inputValue()).toBe("17");
    await bench.exampleSetup(/T-joint.*230|230.*T-joint/i);
    await page.getByText("This bead has a planned set-up").waitFor();
    await shoot(page, "phone-planned");
    await page.getByRole("button", { name: "Keep the planned one" }).tap();
    expect(await volts.inputValue()).toBe("17");
    await bench.exampleSetup(/T-joint.*230|230.*T-joint/i);
    await page.getByRole("button", { name: "Replace it" }).tap();
    await expect.poll(() => volts.inputValue(), patient).not.toBe("17");
    await page.getByRole("button", { name: /^Undo the last change/ }).tap();
    await expect.poll(() => volts.inputValue(), patient).toBe("17");

    await page.evaluate(() => window.scrollTo({ top: 2000 }));
    await bench.section("Marks");
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    await bench.addPhoto(jpeg);
    await yours.waitFor({ state: "detached" });
    await bench.saved();
    expect(page.url()).toBe(next);
    await page.context().close();
  });
});
