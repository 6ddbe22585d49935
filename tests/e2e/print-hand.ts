/**
 * `npm run bench:hand`: how the workbench moves under a hand, in a real Chromium with its processor slowed four times
 * (needs a build: `npx next build`). Frames of pan, zoom and drag with 500 marks on a photo of 48 megapixels, beside a bare
 * Konva stage with the same picture, the same inputs and the same window, in turns; and how long a mark takes from its name
 * to the updated answer with twelve others on the photo. Only this run's machine is meant by the times; the ratio is the
 * message. A frame is the time between two callbacks of the browser's own animation clock; `work` is what the page's main
 * thread was busy with for each of them.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, CDPSession, Page } from "playwright-core";
import sharp from "sharp";
import type { BeadContent } from "@/lib/assess";
import { emptyDrawing, newMark, type Drawing, type Mark } from "@/lib/marks";
import { openBrowser } from "./support/browser";
import { startServer } from "./support/server";

const root = fileURLToPath(new URL("../..", import.meta.url));
const DEMO = path.join(root, "demo-images/set/tee-porosity-soot.jpg");
const WIDTH = 8000;
const HEIGHT = 6000;
const SLOWED = 4;
const ROUNDS = 3;
/** Inputs of one gesture, one a frame. */
const STEPS = 90;
const sized = { viewport: { width: 1280, height: 800 } } as const;

type Gesture = "pan" | "zoom" | "drag";
const gestures: readonly Gesture[] = ["pan", "zoom", "drag"];

interface Moved {
  readonly frames: readonly number[];
  readonly workMs: number;
}

const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

/** Marks in rows over the middle of the photo, of every shape; the first is a ring alone, to be dragged. */
function manyMarks(count: number): readonly Mark[] {
  return Array.from({ length: count }, (_, i) => {
    const x = 900 + (i % 25) * 250;
    const y = 900 + Math.floor(i / 25) * 210;
    const id = `m${i}`;
    if (i % 3 === 0) return newMark(id, "surface-porosity", { kind: "point", at: { x, y }, radius: 40 });
    if (i % 3 === 1) {
      const points = [0, 60, 120].map((dx, k) => ({ x: x + dx, y: y + (k % 2) * 30 }));
      return newMark(id, "undercut", { kind: "line", points });
    }
    const points = Array.from({ length: 12 }, (_, k) => ({
      x: x + 70 * Math.cos((k * Math.PI) / 6),
      y: y + 50 * Math.sin((k * Math.PI) / 6),
    }));
    return newMark(id, "spatter", { kind: "outline", points });
  });
}

async function json<T>(url: string, init: RequestInit): Promise<T> {
  const answer = await fetch(url, init);
  if (!answer.ok) throw new Error(`${url}: ${answer.status} ${await answer.text()}`);
  return (await answer.json()) as T;
}

/** A bead with one photo and this drawing. */
async function beadWith(
  url: string,
  jpeg: Buffer,
  drawing: Drawing,
): Promise<{ id: string; sha256: string }> {
  const head = { origin: url, "content-type": "application/json" };
  const { id } = await json<{ id: string }>(`${url}/api/beads`, {
    method: "POST",
    headers: head,
    body: "{}",
  });
  const { photo } = await json<{ photo: { id: string; sha256: string } }>(`${url}/api/beads/${id}/photos`, {
    method: "POST",
    headers: { origin: url, "content-type": "image/jpeg" },
    body: new Uint8Array(jpeg),
  });
  const bead = await json<{ revision: number; content: BeadContent }>(`${url}/api/beads/${id}`, {});
  const content = { ...bead.content, photos: [{ id: photo.id, role: "face", drawing }] };
  const body = JSON.stringify({ basedOn: bead.revision, content });
  await json(`${url}/api/beads/${id}`, { method: "PUT", headers: head, body });
  return { id, sha256: photo.sha256 };
}

/** Slowed, with a clock that notes every frame while it is told to. */
async function slowed(page: Page): Promise<CDPSession> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Performance.enable");
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  return cdp;
}

async function busyMs(cdp: CDPSession): Promise<number> {
  const { metrics } = await cdp.send("Performance.getMetrics");
  return 1000 * (metrics.find(({ name }) => name === "TaskDuration")?.value ?? NaN);
}

/** One gesture by the browser's own input, a step a frame; `from` is where the hand comes down. */
async function move(
  page: Page,
  cdp: CDPSession,
  gesture: Gesture,
  from: { x: number; y: number },
): Promise<Moved> {
  const mouse = (type: "mousePressed" | "mouseMoved" | "mouseReleased", x: number, y: number) =>
    cdp.send("Input.dispatchMouseEvent", { type, x, y, button: "left", buttons: 1, clickCount: 1 });
  const { x, y } = from;
  await cdp.send("Input.dispatchMouseEvent", { type: "mouseMoved", x, y });
  if (gesture !== "zoom") await mouse("mousePressed", x, y);
  await page.evaluate(() => {
    const noted: number[] = [];
    Object.assign(globalThis, { noted, noting: true });
    const tick = (at: number): void => {
      noted.push(at);
      if ((globalThis as unknown as { noting: boolean }).noting) requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
  const before = await busyMs(cdp);
  const sent: Promise<unknown>[] = [];
  for (let step = 1; step <= STEPS; step += 1) {
    const turn = (2 * Math.PI * step) / STEPS;
    const [dx, dy] = [110 * Math.sin(turn), 70 * Math.sin(2 * turn)];
    const deltaY = step <= STEPS / 2 ? -24 : 24;
    // A hand does not wait for the page: what comes too fast is the browser's to put together.
    sent.push(
      gesture === "zoom"
        ? cdp.send("Input.dispatchMouseEvent", { type: "mouseWheel", x, y, deltaX: 0, deltaY })
        : mouse("mouseMoved", x + dx, y + dy),
    );
    await wait(16);
  }
  await Promise.all(sent);
  const busy = (await busyMs(cdp)) - before;
  const frames = await page.evaluate(() => {
    const state = globalThis as unknown as { noted: number[]; noting: boolean };
    state.noting = false;
    return state.noted.slice(1).map((at, i) => at - (state.noted[i] ?? at));
  });
  if (gesture !== "zoom") await mouse("mouseReleased", x, y);
  await wait(600);
  return { frames, workMs: busy / Math.max(1, frames.length) };
}

/** What compiles this file names functions by a helper that a page has not. */
async function newPage(browser: Browser): Promise<Page> {
  const page = await (await browser.newContext(sized)).newPage();
  await page.addInitScript("globalThis.__name = (named) => named");
  return page;
}

/** Ours: the workbench, opened on the bead. */
async function openOurs(browser: Browser, url: string, id: string) {
  const page = await newPage(browser);
  await page.goto(`${url}/beads/${id}`);
  await page.waitForSelector('[data-testid="bead-canvas"][data-photo-state="sharp"]', { timeout: 120_000 });
  await page
    .getByRole("button", { name: "Marks" })
    .first()
    .click()
    .catch(() => undefined);
  await wait(2500);
  const canvas = page.getByTestId("bead-canvas");
  const box = (await canvas.boundingBox())!;
  const view = async (name: string) => Number(await canvas.getAttribute(name));
  const at = async (px: number, py: number) => ({
    x: box.x + (await view("data-pan-x")) + px * (await view("data-zoom")),
    y: box.y + (await view("data-pan-y")) + py * (await view("data-zoom")),
  });
  return { page, box, at };
}

/** Bare: a Konva stage of that size with the same picture laid the same way, and a ring on a layer above it. */
async function openBare(browser: Browser, picture: Buffer, box: { width: number; height: number }) {
  const page = await newPage(browser);
  await page.goto("data:text/html,");
  await page.evaluate("globalThis.__name = (named) => named");
  await page.setContent('<body style="margin:0"><div id="stage"></div></body>');
  await page.addScriptTag({ path: path.join(root, "node_modules/konva/konva.min.js") });
  const src = `data:image/jpeg;base64,${picture.toString("base64")}`;
  await page.evaluate(
    async ({ src, width, height, photo }) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      // eslint-disable-next-line @typescript-eslint/no-explicit-any -- the library as a page has it
      const Konva = (globalThis as any).Konva;
      const stage = new Konva.Stage({ container: "stage", width, height });
      const zoom = Math.min(width / photo.width, height / photo.height);
      const below = new Konva.Layer({ listening: false });
      const above = new Konva.Layer();
      const ring = new Konva.Circle({
        x: 900,
        y: 900,
        radius: 160,
        stroke: "red",
        strokeWidth: 60,
        fill: "#fff1",
      });
      ring.draggable(true);
      below.add(new Konva.Image({ image, width: photo.width, height: photo.height }));
      above.add(ring);
      stage.add(below, above);
      stage.scale({ x: zoom, y: zoom });
      stage.draggable(true);
      stage.on("wheel", (event: { evt: WheelEvent }) => {
        event.evt.preventDefault();
        const old = stage.scaleX();
        const now = old * Math.exp(-event.evt.deltaY * 0.0018);
        const at = stage.getPointerPosition();
        const under = { x: (at.x - stage.x()) / old, y: (at.y - stage.y()) / old };
        stage.scale({ x: now, y: now });
        stage.position({ x: at.x - under.x * now, y: at.y - under.y * now });
      });
    },
    { src, ...box, photo: { width: WIDTH, height: HEIGHT } },
  );
  await wait(1000);
  const zoom = Math.min(box.width / WIDTH, box.height / HEIGHT);
  return { page, at: async (px: number, py: number) => ({ x: px * zoom, y: py * zoom }) };
}

/** From the press on a name in the picker to the frame in which the new mark has its size and the bead its answer. */
async function markToAnswer(browser: Browser, url: string, id: string): Promise<readonly number[]> {
  const { page, at } = await openOurs(browser, url, id);
  await slowed(page);
  const took: number[] = [];
  for (let turn = 0; turn < 5; turn += 1) {
    await page.getByRole("radio", { name: "Line", exact: true }).click();
    const [a, b] = [await at(2000, 5000 - 120 * turn), await at(2900, 5000 - 120 * turn)];
    await page.mouse.move(a.x, a.y);
    await page.mouse.down();
    await page.mouse.move(b.x, b.y, { steps: 4 });
    await page.mouse.up();
    const name = page
      .getByRole("dialog", { name: "What is it?" })
      .getByRole("button", { name: /^Undercut/ })
      .first();
    await name.waitFor();
    await wait(800);
    await page.evaluate(() => {
      const list = () =>
        [...document.querySelectorAll('[aria-label="Marks on this photo"] li')].filter((row) =>
          row.querySelector("strong"),
        );
      const before = list().length;
      Object.assign(globalThis, { answered: null });
      const begin = (event: Event): void => {
        const pressed = event.timeStamp;
        removeEventListener("pointerup", begin, true);
        const look = (now: number): void => {
          if (list().length > before) Object.assign(globalThis, { answered: now - pressed });
          else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      };
      addEventListener("pointerup", begin, true);
    });
    await name.click();
    await page.waitForFunction(
      () => (globalThis as unknown as { answered: number | null }).answered !== null,
    );
    took.push(await page.evaluate(() => (globalThis as unknown as { answered: number }).answered));
    await wait(1500);
  }
  await page.context().close();
  return took;
}

async function photo(): Promise<Buffer> {
  return sharp(readFileSync(DEMO)).resize(WIDTH, HEIGHT, { fit: "fill" }).jpeg({ quality: 85 }).toBuffer();
}

const row = (cells: readonly (string | number)[], widths: readonly number[]): string =>
  cells
    .map((cell, i) => (i === 0 ? String(cell).padEnd(widths[0]!) : String(cell).padStart(widths[i]!)))
    .join("  ");

async function frameTable(browser: Browser, url: string, jpeg: Buffer): Promise<void> {
  const many = await beadWith(url, jpeg, { ...emptyDrawing, marks: [...manyMarks(500)] });
  const picture = Buffer.from(await (await fetch(`${url}/api/photos/${many.sha256}/view`)).arrayBuffer());
  const ours = await openOurs(browser, url, many.id);
  const bare = await openBare(browser, picture, ours.box);
  const [oursCdp, bareCdp] = [await slowed(ours.page), await slowed(bare.page)];
  const widths = [6, 10, 10, 10, 10, 8, 10, 10];
  const heads = ["", "ours p50", "ours p95", "bare p50", "bare p95", "ratio", "our work", "bare work"];
  process.stdout.write(`${row(heads, widths)}\n`);
  for (const gesture of gestures) {
    const got = { ours: [] as Moved[], bare: [] as Moved[] };
    for (let round = 0; round < ROUNDS; round += 1)
      for (const side of ["ours", "bare"] as const) {
        const { page, at } = side === "ours" ? ours : bare;
        const cdp = side === "ours" ? oursCdp : bareCdp;
        await page.bringToFront();
        // A drag takes the first mark, picked before; everything else begins on bare photo.
        if (side === "ours" && gesture === "drag" && round === 0) {
          const spot = await at(900, 900);
          await page.mouse.click(spot.x, spot.y);
          await wait(1500);
        }
        const from = gesture === "drag" ? await at(900, 900) : await at(4100, 5600);
        got[side].push(await move(page, cdp, gesture, from));
      }
    const frames = (side: Moved[]): number[] => side.flatMap((one) => one.frames);
    const work = (side: Moved[]): number =>
      quantile(
        side.map((one) => one.workMs),
        0.5,
      );
    const [o, b] = [frames(got.ours), frames(got.bare)];
    const ms = (value: number): string => `${value.toFixed(1)} ms`;
    const ratio = (quantile(o, 0.95) / quantile(b, 0.95)).toFixed(2);
    const cells = [
      gesture,
      ms(quantile(o, 0.5)),
      ms(quantile(o, 0.95)),
      ms(quantile(b, 0.5)),
      ms(quantile(b, 0.95)),
      ratio,
      ms(work(got.ours)),
      ms(work(got.bare)),
    ];
    process.stdout.write(`${row(cells, widths)}\n`);
  }
  await ours.page.context().close();
  await bare.page.context().close();
}

async function main(): Promise<void> {
  const [server, browser, jpeg] = await Promise.all([startServer(), openBrowser(), photo()]);
  try {
    process.stdout.write(
      `500 marks on ${WIDTH} x ${HEIGHT} px, processor slowed ${SLOWED} times; ratio of p95\n`,
    );
    await frameTable(browser, server.url, jpeg);
    const scale: Drawing["scale"] = {
      kind: "two-points",
      a: { x: 1000, y: 5600 },
      b: { x: 7000, y: 5600 },
      lengthMm: 150,
    };
    const weldLine = [
      { x: 800, y: 3000 },
      { x: 7200, y: 3000 },
    ];
    const twelve = await beadWith(server.url, jpeg, {
      ...emptyDrawing,
      scale,
      weldLine,
      marks: [...manyMarks(12)],
    });
    const took = await markToAnswer(browser, server.url, twelve.id);
    const list = took.map((ms) => Math.round(ms)).join(", ");
    process.stdout.write(
      `mark named to updated answer, 12 marks: ${Math.round(quantile(took, 0.5))} ms (${list})\n`,
    );
  } finally {
    await browser.close();
    await server.stop();
  }
}

await main();
