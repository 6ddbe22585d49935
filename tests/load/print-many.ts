/**
 * `npm run -s load:many -- FOLDER`: serves a copy of a data folder with very many beads (`bench:grow -- --keep` makes one) by the
 * built product and goes through it in a real browser, on a phone and on a desk: each page, how long it took until it stood, and
 * a picture in tests/.out/shots. Rows that an older version worked out are worked out again meanwhile; how many is said.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { buildApp, migrate } from "@/lib/cli/prepare.mjs";
import { closeWindows, desktop, openBrowser, phone, shoot } from "../e2e/support/browser";
import { startServer, type TestServer } from "../e2e/support/server";
import { PATIENT_MS } from "../setup/patience";

const words = process.argv.slice(2);
const isVerified = words.includes("--verify");
const [from] = words.filter((word) => word !== "--verify");
if (!from || from.startsWith("--")) {
  console.log(
    "npm run -s load:many -- FOLDER [--verify]     a data folder, of which a copy is served; --verify: the whole walk too",
  );
  process.exit(from === "--help" ? 0 : 2);
}

/** The walk over everything steps back behind whoever works, so on a busy machine it takes long. */
const WALK_MS = 6 * PATIENT_MS;

const isCard = (page: Page) => page.getByRole("checkbox", { name: /^Choose bead \d+$/ }).first();
const said = (page: Page) => page.getByRole("status").first();

interface Look {
  readonly name: string;
  /** What is done until it stands; what it says then. */
  readonly until: (page: Page, url: string) => Promise<string>;
}

async function list(page: Page, url: string): Promise<string> {
  await page.goto(url);
  await isCard(page).waitFor();
  return said(page).innerText();
}

/** Begins a table of all beads and goes away after its first pieces. */
async function exportStopped(page: Page, url: string): Promise<string> {
  await page.goto(`${url}/exports`);
  await page.getByText(/^These take all/).waitFor();
  const stop = new AbortController();
  const answer = await fetch(`${url}/api/export/beads.csv`, { signal: stop.signal });
  let bytes = 0;
  for await (const piece of answer.body as unknown as AsyncIterable<Uint8Array>) {
    bytes += piece.length;
    if (bytes > 500_000) break;
  }
  stop.abort();
  const health = await fetch(`${url}/api/health`);
  return `${answer.status}, stopped after ${bytes} bytes; then it answers ${health.status}`;
}

async function opened(page: Page, url: string): Promise<string> {
  const { beads } = (await (await fetch(`${url}/api/beads?limit=1`)).json()) as { beads: { id: string }[] };
  await page.goto(`${url}/beads/${beads[0]?.id}`);
  await page.getByLabel("Title", { exact: true }).waitFor();
  return page.title();
}

/** Until the server has it: what the page says may be of an earlier save. */
async function saved(page: Page, url: string): Promise<string> {
  const title = `Saved among many ${page.viewportSize()?.width}`;
  const id = new URL(page.url()).pathname.split("/").at(-1);
  await page.getByLabel("Title", { exact: true }).fill(title);
  for (;;) {
    const bead = (await (await fetch(`${url}/api/beads/${id}`)).json()) as { content: { title: string } };
    if (bead.content.title === title) break;
    await page.waitForTimeout(20);
  }
  await page.getByText("Saved", { exact: true }).waitFor();
  return title;
}

const looks: readonly Look[] = [
  { name: "home", until: (page, url) => list(page, `${url}/`) },
  { name: "the list again", until: (page, url) => list(page, `${url}/`) },
  { name: "filter", until: (page, url) => list(page, `${url}/?joint=tee&imperfection=undercut`) },
  { name: "word", until: (page, url) => list(page, `${url}/?q=cold+lap`) },
  { name: "last page", until: (page, url) => list(page, `${url}/?page=last`) },
  {
    name: "trends",
    async until(page, url) {
      await page.goto(`${url}/trends`);
      await said(page).waitFor();
      return said(page).innerText();
    },
  },
  { name: "export", until: exportStopped },
  {
    name: "log",
    async until(page, url) {
      await page.goto(`${url}/log`);
      await page.getByRole("button", { name: "Verify everything" }).waitFor();
      return page.getByRole("row").nth(1).innerText();
    },
  },
  { name: "a bead", until: opened },
  { name: "saved", until: saved },
];

async function lookAt(server: TestServer, size: string, device: object): Promise<void> {
  const browser = await openBrowser();
  const page = await (await browser.newContext(device)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  for (const { name, until } of looks) {
    const began = performance.now();
    const words = await until(page, server.url);
    const ms = Math.round(performance.now() - began)
      .toString()
      .padStart(7);
    const memory = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${server.pid()}/status`, "utf8"))?.[1];
    const mb = Math.round(Number(memory) / 1024)
      .toString()
      .padStart(6);
    console.log(
      `${size.padEnd(8)} ${name.padEnd(15)} ${ms} ms ${mb} MB  ${words.replace(/\s+/g, " ").slice(0, 90)}`,
    );
    await shoot(page, `many-${size}-${name.replaceAll(" ", "-")}`);
  }
  await page.close();
}

/** The whole walk, in a process of its own beside the pages; how the list does meanwhile. */
async function verified(server: TestServer): Promise<void> {
  const browser = await openBrowser();
  const page = await (await browser.newContext(desktop)).newPage();
  page.setDefaultTimeout(WALK_MS);
  await page.goto(`${server.url}/log`);
  const began = performance.now();
  await page.getByRole("button", { name: "Verify everything" }).click();
  const found = page
    .getByText(/^(Everything fits|One finding|\d+ findings|The records could not|The look broke off)/)
    .waitFor();
  const meanwhile: number[] = [];
  let isOver = false;
  void found.finally(() => (isOver = true)).catch(() => undefined);
  while (!isOver) {
    const asked = performance.now();
    await (await fetch(`${server.url}/`)).text();
    meanwhile.push(performance.now() - asked);
    await new Promise((resolve) => setTimeout(resolve, 2000));
  }
  await found;
  const words = await page
    .getByText(/^(Everything fits|One finding|\d+ findings|The records could not|The look broke off)/)
    .innerText();
  const middle = meanwhile.toSorted((a, b) => a - b)[meanwhile.length >> 1] ?? 0;
  console.log(`verify   ${((performance.now() - began) / 1000).toFixed(0)} s: ${words}`);
  console.log(`         the list meanwhile: ${Math.round(middle)} ms (median of ${meanwhile.length})`);
  await shoot(page, "many-desktop-verify");
}

const staleIn = async (url: string): Promise<number> =>
  ((await (await fetch(`${url}/api/health`)).json()) as { beadsBeingWorkedOut: number }).beadsBeingWorkedOut;

await buildApp();
const folder = mkdtempSync(path.join(tmpdir(), "toeline-many-"));
let server: TestServer | null = null;
try {
  cpSync(from, folder, { recursive: true });
  await migrate(folder, null);
  server = await startServer(folder);
  const before = await staleIn(server.url);
  console.log(
    `load ${loadavg()[0]!.toFixed(1)}; ${before} rows are stale and are worked out again from now on`,
  );
  await lookAt(server, "phone", phone);
  await lookAt(server, "desktop", desktop);
  const after = await staleIn(server.url);
  console.log(
    `load ${loadavg()[0]!.toFixed(1)}; ${after} rows are still stale, ${before - after} were worked out meanwhile`,
  );
  if (isVerified) await verified(server);
} finally {
  const browser = await openBrowser();
  await closeWindows(browser);
  await browser.close();
  await server?.stop();
  rmSync(folder, { recursive: true, force: true });
}
