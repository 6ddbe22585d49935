/**
 * JavaScript a page needs until it stands, gzipped, in a real Chromium. What it fetches at rest is told apart by giving it no
 * rest before it stands (`requestIdleCallback` is held back): the page has to come up without. Then it gets its rest, and what
 * comes now is the second column. What is fetched ahead for other pages is in it too; the service worker is not. Beside it the
 * same count of two bare pages built by the same Next: one with nothing on it, one with a photo on a Konva stage.
 */
import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { openBrowser, phone } from "../e2e/support/browser";
import { withoutRest } from "../e2e/support/no-rest";
import { PATIENT_MS } from "../setup/patience";
import type { Figure } from "./figures";
import type { Shop } from "./shop";
import { wait } from "./windows";

const root = fileURLToPath(new URL("../..", import.meta.url));
const NEXT = path.join(root, "node_modules/next/dist/bin/next");
/** Outside of this house, whose own instrumentation Next would take along; its packages are linked, so each clone has its own. */
const clone = createHash("sha256").update(root).digest("hex").slice(0, 12);
const BARE = path.join(tmpdir(), `toeline-bare-pages-${clone}`);
const BARE_PORT = 19_800 + (process.pid % 100);

const bareFiles: Readonly<Record<string, string>> = {
  "package.json": `{ "name": "bare", "private": true, "type": "module" }`,
  "next.config.mjs": `export default { turbopack: { root: "/" }, outputFileTracingRoot: "/" };`,
  "app/layout.jsx": `export default ({ children }) => <html lang="en"><body>{children}</body></html>;`,
  "app/page.jsx": `export default () => <main data-stands="">Nothing</main>;`,
  "app/stage/page.jsx": `"use client";
import dynamic from "next/dynamic";
const Bare = dynamic(() => import("./bare"), { ssr: false });
export default function Page() { return <Bare />; }`,
  "app/stage/bare.jsx": `"use client";
import { Circle, Image, Layer, Stage } from "react-konva";
export default function Bare() {
  return (
    <div data-stands="">
      <Stage width={600} height={400} draggable><Layer><Image width={600} height={400} /><Circle radius={9} draggable /></Layer></Stage>
    </div>
  );
}`,
};

/** Builds the two bare pages, once for each version of what they are made of. */
async function buildBare(): Promise<void> {
  const stamp = JSON.stringify([bareFiles, versions()]);
  const stampFile = path.join(BARE, ".next/built-from");
  if (existsSync(stampFile) && readFileSync(stampFile, "utf8") === stamp) return;
  rmSync(BARE, { recursive: true, force: true });
  for (const [name, text] of Object.entries(bareFiles)) {
    mkdirSync(path.dirname(path.join(BARE, name)), { recursive: true });
    writeFileSync(path.join(BARE, name), text);
  }
  symlinkSync(path.join(root, "node_modules"), path.join(BARE, "node_modules"));
  const child = spawn(process.execPath, [NEXT, "build"], {
    cwd: BARE,
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" },
  });
  const code = await new Promise((resolve) => child.once("exit", resolve));
  if (code !== 0) throw new Error(`the bare pages were not built (${String(code)})`);
  writeFileSync(stampFile, stamp);
}

const versions = (): readonly string[] =>
  ["next", "react", "react-dom", "konva", "react-konva"].map((name) => {
    const file = path.join(root, "node_modules", name, "package.json");
    return (JSON.parse(readFileSync(file, "utf8")) as { version: string }).version;
  });

async function withBare<T>(work: (url: string) => Promise<T>): Promise<T> {
  await buildBare();
  const child = spawn(process.execPath, [NEXT, "start", "-H", "127.0.0.1", "-p", String(BARE_PORT)], {
    cwd: BARE,
    stdio: ["ignore", "ignore", "inherit"],
    env: { ...process.env, NODE_ENV: "production" },
  });
  const url = `http://127.0.0.1:${BARE_PORT}`;
  try {
    const until = Date.now() + PATIENT_MS;
    while (!(await fetch(url).catch(() => null))?.ok) {
      if (Date.now() > until || child.exitCode !== null) throw new Error("the bare pages are not served");
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    return await work(url);
  } finally {
    child.kill("SIGTERM");
  }
}

interface Weighed {
  /** Until it stands. */
  readonly kB: number;
  /** What came once it had its rest. */
  readonly laterKB: number;
  readonly files: readonly { readonly name: string; readonly kB: number }[];
}

/** Longer than any timer by which a page fetches something at rest, ms. */
const REST_MS = 6_000;

/** Kilobytes (1000 bytes) of script until `stands` is there, after a press on `press` where it waits for one, and the line is quiet. */
async function weigh(url: string, stands: string, press?: string): Promise<Weighed> {
  const context = await (await openBrowser()).newContext({ ...phone, serviceWorkers: "block" });
  const page = await context.newPage();
  const { giveRest } = await withoutRest(page);
  const bodies = new Map<string, Promise<Buffer>>();
  page.on("response", (answer) => {
    if (answer.request().resourceType() === "script" && answer.url().startsWith("http"))
      bodies.set(answer.url(), answer.body());
  });
  await page.goto(url);
  if (press !== undefined) await page.locator(press).click({ timeout: PATIENT_MS });
  await page.waitForSelector(stands, { timeout: PATIENT_MS });
  await page.waitForLoadState("networkidle");
  const early = new Set(bodies.keys());
  await giveRest();
  await wait(REST_MS);
  const files = await Promise.all(
    [...bodies].map(async ([name, body]) => ({
      name: name.slice(name.lastIndexOf("/") + 1),
      isLater: !early.has(name),
      kB: gzipSync(await body).length / 1000,
    })),
  );
  await context.close();
  const sum = (isLater: boolean): number =>
    files.reduce((all, file) => (file.isLater === isLater ? all + file.kB : all), 0);
  return { kB: sum(false), laterKB: sum(true), files };
}

/** On a phone a bead that has an answer opens on it; the photo to mark on is one press away. */
const TO_MARKS = '[data-tab="photo"]';
const CANVAS = '[data-testid="bead-canvas"][data-photo-state="sharp"] canvas';

export async function scriptFigures({ url, pages }: Shop): Promise<readonly Figure[]> {
  const [empty, stage] = await withBare(async (bare) => [
    await weigh(bare, "[data-stands]"),
    await weigh(`${bare}/stage`, "[data-stands] canvas"),
  ]);
  const [bareName, stageName] = ["bare Next page", "bare Next page with react-konva"];
  const asked = [
    { page: "workbench", stands: CANVAS, press: TO_MARKS, name: stageName, against: stage, most: 120 },
    { page: "hand-in", stands: "form", name: bareName, against: empty, most: 60 },
    { page: "list", stands: "main li", name: bareName, against: empty, most: null },
    { page: "sheet", stands: "article", name: bareName, against: empty, most: null },
  ] as const;
  const figures: Figure[] = [];
  for (const { page, stands, name, against, most, ...way } of asked) {
    const { kB, laterKB, files } = await weigh(
      url + pages[page],
      stands,
      "press" in way ? way.press : undefined,
    );
    if (process.env["FILES"])
      console.log(
        page,
        files.toSorted((a, b) => b.kB - a.kB),
      );
    figures.push({
      work: `JavaScript of ${page}, gzipped`,
      ours: kB,
      later: laterKB,
      unit: "kB",
      baseline: { name, value: against.kB },
      goal: most === null ? null : { kind: "beyond", most },
      note: `${(kB - against.kB).toFixed(1)} kB more`,
    });
  }
  return figures;
}
