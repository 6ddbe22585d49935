import { spawn } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openDb, type Db } from "@/lib/db";
import { growShop } from "@/lib/demo/grow-shop";
import { PATIENT_MS } from "../setup/patience";
import { storePlainPhotos } from "../setup/plain-photos";
import { closeWindows, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { windows } from "./support/windows";

/** A folder that `npm run bench:grow -- --keep FOLDER BEADS` made: served instead of the one that is made here. */
const kept = process.env["TOELINE_MANY"] ?? "";
const root = fileURLToPath(new URL("../..", import.meta.url));
/** For a look at all of them; some 10 ms a bead. */
const LOOK_MS = 12 * PATIENT_MS;
const AT_FIRST = 998;
const IN_ALL = 2001;

let server: TestServer;
let browser: Browser;
let db: Db;
let beads = IN_ALL;

async function grow(count: number): Promise<void> {
  const photos = await storePlainPhotos(db, server.dataFolder);
  const until = new Date("2026-11-26T12:00:00Z");
  await growShop({ db, by: "test" }, { beads: count, seed: 11, until, photos });
}

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(kept || undefined), openBrowser()]);
  db = openDb(`file:${path.join(server.dataFolder, "toeline.db")}`);
  if (kept) beads = await db.bead.count();
  else await grow(AT_FIRST);
});
afterAll(async () => {
  await closeWindows(browser);
  await db?.$disconnect();
  await server?.stop();
});

async function open(device: Parameters<Browser["newContext"]>[0], where = "/"): Promise<Page> {
  const page = await (await browser.newContext(device)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  const answer = await page.goto(`${server.url}${where}`);
  expect(answer?.status()).toBe(200);
  return page;
}

const status = (page: Page): Promise<string> => page.getByRole("status").first().innerText();
const cards = (page: Page): Promise<number> =>
  page.getByRole("checkbox", { name: /^Choose bead \d+$/ }).count();

/** The lines of a table, counted as they come. */
async function linesOf(where: string): Promise<number> {
  const answer = await fetch(`${server.url}${where}`);
  expect(answer.status).toBe(200);
  let lines = 0;
  let inQuotes = false;
  for await (const piece of answer.body as unknown as AsyncIterable<Uint8Array>)
    for (const byte of piece) {
      if (byte === 34) inQuotes = !inQuotes;
      else if (byte === 10 && !inQuotes) lines += 1;
    }
  return lines;
}

function verified(): Promise<number | null> {
  const args = ["--conditions=react-server", "--import", "tsx", "lib/cli/verify.ts"];
  const env = { ...process.env, TOELINE_DATA: server.dataFolder };
  return new Promise((resolve) => {
    spawn(process.execPath, args, { cwd: root, env, stdio: "ignore" }).on("close", resolve);
  });
}

describe.runIf(!kept)("998 beads", () => {
  it("are counted, filtered and turned over", async () => {
    const page = await open(windows[0]![1]);
    expect(await status(page)).toContain("998 recorded, newest first.");
    expect(await cards(page)).toBe(48);
    await grow(IN_ALL - AT_FIRST);
  });
});

describe("more beads than a list counts", () => {
  it.each(windows)("home page, search, a filter and the last page on the %s", async (name, device) => {
    const page = await open(device);
    expect(await status(page)).toContain("More than 1000 recorded, newest first.");
    expect(await cards(page)).toBe(48);
    await shoot(page, `many-beads-${name}`);
    await page.getByRole("link", { name: "Count them" }).click();
    await page.getByText(`${beads} recorded, newest first.`).waitFor();
    await page.goto(`${server.url}/?q=tee`);
    const found = await status(page);
    expect(found).toMatch(/^(More than 1000|\d+ of more than 1000) fit\./);
    expect(await cards(page)).toBe(48);
    await page.goto(`${server.url}/?joint=tee&imperfection=undercut`);
    expect(await cards(page)).toBeGreaterThan(0);
    await page.goto(`${server.url}/?page=last`);
    await page.getByLabel("Choose bead 1", { exact: true }).waitFor();
  });

  it("trends are of all of them", async () => {
    const page = await open(windows[0]![1], "/trends");
    expect(await status(page)).toContain(`${beads} of ${beads} beads.`);
    await shoot(page, "many-beads-trends");
  });

  it("exports hold all of them, and the verifier finds nothing", async () => {
    expect(await linesOf("/api/export/beads.csv")).toBe(beads + 1);
    const page = await open(windows[0]![1], "/exports");
    await page.getByText(`These take all ${beads} beads`).waitFor();
    expect(await verified()).toBe(0);
  });

  it(
    "are looked at one and all from the page of the log, and fit",
    async () => {
      const page = await open(windows[0]![1], "/log");
      page.setDefaultTimeout(LOOK_MS);
      await page.getByRole("button", { name: "Verify everything" }).click();
      const said = page.getByText(/^(Everything fits|\d+ findings|One finding|The look broke off)/);
      const began = performance.now();
      expect(await said.innerText()).toMatch(new RegExp(`^Everything fits: .*\\b${beads} records`));
      console.log(`${beads} beads looked at in ${Math.round((performance.now() - began) / 1000)} s`);
      await shoot(page, "many-beads-looked-at");
    },
    LOOK_MS,
  );
});
