import { openDb, type Db } from "@/lib/db";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import { createInspection, createJob, getJob, saveJob } from "@/lib/jobs";
import { PATIENT_MS } from "../setup/patience";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { listened } from "./support/listened";
import { startServer, type TestServer } from "./support/server";
import { itDeep } from "../setup/in-depth";

/** More than one page of the list holds. */
const BEADS = 60;

let server: TestServer;
let browser: Browser;
let db: Db;
const beadIds: string[] = [];

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  db = openDb(server.database, server.dataFolder);
  for (let i = 1; i <= BEADS; i += 1) {
    const createdAt = new Date(Date.UTC(2026, 9, 1, 8, i));
    const made = await createBead({ db, by: "test" }, { title: `Lap ${(i * 37) % 61}`, createdAt });
    if (!made.ok) throw new Error("no bead");
    beadIds.push(made.value.id);
  }
});
afterAll(async () => {
  await closeWindows(browser);
  await db?.$disconnect();
  await server?.stop();
});

async function open(device: Parameters<Browser["newContext"]>[0]): Promise<Page> {
  const page = await (await browser.newContext(device)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  await page.goto(server.url);
  await listened(page);
  return page;
}
const box = (page: Page, number: number) => page.getByLabel(`Choose bead ${number}`, { exact: true });
const bar = (page: Page) => page.getByRole("region", { name: "Chosen beads" });

describe("the list as a table", () => {
  it("is sorted by its heads, and stays a table", async () => {
    const page = await open(desktop);
    await page.getByRole("button", { name: "Table" }).click();
    await page.getByRole("table", { name: "Beads" }).waitFor();
    const numbers = async () =>
      (await page.locator('tbody td[data-column="number"]').allInnerTexts()).map(Number);
    expect((await numbers()).slice(0, 3)).toEqual([60, 59, 58]);
    await page.getByRole("link", { name: "Bead", exact: true }).click();
    await page.locator('th[data-column="title"][aria-sort="ascending"]').waitFor();
    const up = await page.locator('tbody th[data-column="title"]').allInnerTexts();
    expect(up).toEqual(up.toSorted());
    await page.getByRole("link", { name: "Bead", exact: true }).click();
    await page.locator('th[data-column="title"][aria-sort="descending"]').waitFor();
    const down = await page.locator('tbody th[data-column="title"]').allInnerTexts();
    expect(down).toEqual(down.toSorted().reverse());
    await shoot(page, "list-table-desktop");
    await page.reload();
    await page.getByRole("table", { name: "Beads" }).waitFor();
    await page.getByRole("button", { name: "Cards" }).click();
    await page.getByRole("table", { name: "Beads" }).waitFor({ state: "detached" });
  });
});

describe("several beads", () => {
  it("are chosen by keyboard over two pages, laid side by side, deleted and brought back", async () => {
    const page = await open(desktop);
    await box(page, 60).focus();
    await page.keyboard.press("Space");
    await bar(page).getByText("1 chosen").waitFor();
    await page.getByRole("link", { name: "Next page" }).click();
    await box(page, 12).waitFor();
    await box(page, 12).focus();
    await page.keyboard.press("Space");
    await bar(page).getByText("2 chosen").waitFor();
    const compare = bar(page).getByRole("link", { name: "Compare 60 and 12" });
    expect(await compare.getAttribute("href")).toBe(`/compare?pick=${beadIds[59]}&pick=${beadIds[11]}`);
    await shoot(page, "list-chosen-desktop");
    await page.goto(server.url);
    // The window remembers them; a page just opened takes a moment to say so.
    await expect.poll(() => box(page, 60).isChecked(), { timeout: PATIENT_MS }).toBe(true);

    await bar(page).getByRole("button", { name: "Delete" }).click();
    await bar(page).getByText("Beads 60 and 12 deleted.").waitFor();
    await page.getByText("58 recorded, newest first.").waitFor();
    expect(await db.bead.count()).toBe(BEADS - 2);
    await bar(page).getByRole("button", { name: "Bring them back" }).click();
    await bar(page).getByText("Beads 60 and 12 brought back.").waitFor();
    await page.getByText("60 recorded, newest first.").waitFor();
    await bar(page).getByRole("button", { name: "Seen" }).click();
    await bar(page).waitFor({ state: "detached" });
  });

  itDeep("go to a weld of a job, or out as a file", async () => {
    const pen = { db, by: "test" };
    const made = await createJob(pen, { title: "Hopper stand" });
    if (!made.ok) throw new Error("no job");
    const job = (await getJob(db, made.value.id))!;
    await saveJob(pen, job.id, job.revision, { ...job.content, welds: [{ id: "w1", number: "W1" }] });
    expect((await createInspection(pen, job.id)).ok).toBe(true);

    const page = await open(phone);
    for (const number of [59, 58]) await box(page, number).check();
    await bar(page).getByRole("button", { name: "To a job" }).click();
    await bar(page).getByLabel("Weld of a job").selectOption({ label: "Job 1, Hopper stand: weld W1" });
    await bar(page).getByRole("button", { name: "File them there" }).click();
    await bar(page)
      .getByText("Beads 58 and 59 filed.")
      .or(bar(page).getByText("Beads 59 and 58 filed."))
      .waitFor();
    expect(await db.bead.count({ where: { jobId: job.id, weldId: "w1" } })).toBe(2);
    await shoot(page, "list-filed-phone");
    await bar(page).getByRole("button", { name: "Seen" }).click();

    await page.getByLabel("Choose all on this page").check();
    await bar(page).getByText("48 chosen").waitFor();
    const csv = await bar(page).getByRole("link", { name: "CSV" }).getAttribute("href");
    const rows = (await (await page.request.get(`${server.url}${csv}`)).text()).trim().split("\n");
    expect(rows).toHaveLength(1 + 48);
    await bar(page).getByRole("button", { name: "Choose none" }).click();
  });
});
