import { mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

let server: TestServer;
let browser: Browser;
let page: Page;
const disk = mkdtempSync(path.join(tmpdir(), "toeline-disk-"));
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  page = await (await browser.newContext(phone)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
  rmSync(disk, { recursive: true, force: true });
});

const panel = (name: string | RegExp) =>
  page.locator("section", { has: page.getByRole("heading", { name }) });
const health = async () =>
  (await fetch(`${server.url}/api/health`).then((answer) => answer.json())) as Record<string, unknown>;

it("the owner makes a backup while it serves, and switches on one for every night; health says when the last was good", async () => {
  await page.goto(`${server.url}/backups`);
  await page.getByText("There is no backup yet of what lies here.").waitFor();
  expect(await health()).toMatchObject({ ok: true, backup: "by-hand", lastGoodBackup: null });
  await shoot(page, "backups-phone");

  const now = panel("Back up now");
  const nightly = panel(/^Every night/);
  await now.getByLabel("Folder for backups").fill("somewhere");
  await now.getByRole("button", { name: "Back up now" }).click();
  await now.getByText(/Name the folder for backups from the root on/).waitFor();
  await now.getByLabel("Folder for backups").fill(disk);
  await now.getByRole("button", { name: "Back up now" }).click();
  await now.getByText(/verified whole/).waitFor();
  expect(readdirSync(disk).length).toBe(1);
  expect(readdirSync(path.join(disk, readdirSync(disk)[0]!))).toContain("backup.json");

  const nights = path.join(disk, "nights");
  mkdirSync(nights);
  await nightly.getByLabel("Folder for backups").fill(nights);
  await nightly.getByRole("button", { name: "Switch on" }).click();
  await panel("Every night: on").waitFor();
  expect(await health()).toMatchObject({ ok: true, backup: "nightly", lastGoodBackup: expect.any(String) });
  const wide = await (await browser.newContext({ ...desktop, colorScheme: "dark" })).newPage();
  await wide.goto(`${server.url}/backups`);
  await wide.getByText(/Last good backup/).waitFor();
  await shoot(wide, "backups-desktop");
});
