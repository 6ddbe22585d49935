/**
 * How the workbench moves under a hand, in a real Chromium with its processor slowed four times: pan, zoom and drag with 500
 * marks on 48 megapixels, beside a bare Konva stage with the same picture, in turn.
 */
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, CDPSession, Page } from "playwright-core";
import { emptyDrawing } from "@/lib/marks";
import { beadWith, manyMarks } from "./beads";
import { median, quantile, type Figure } from "./figures";
import { HEIGHT, WIDTH } from "./photos";
import { newPage, openOurs, slowed, wait, type Opened } from "./windows";

const root = fileURLToPath(new URL("../..", import.meta.url));
const ROUNDS = 3;
/** Inputs of one gesture, one a frame. */
const STEPS = 90;

type Gesture = "pan" | "zoom" | "drag";
const gestures: readonly Gesture[] = ["pan", "zoom", "drag"];

interface Moved {
  readonly frames: readonly number[];
  readonly workMs: number;
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

/** Bare: a Konva stage of that size with the same picture laid the same way, and a ring on a layer above it. */
export async function openBare(browser: Browser, picture: Buffer, box: { width: number; height: number }) {
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

interface Turns {
  readonly ours: Moved[];
  readonly bare: Moved[];
}

/** One gesture in both windows in turn, `ROUNDS` times. */
async function inTurn(
  gesture: Gesture,
  sides: Readonly<Record<keyof Turns, Pick<Opened, "page" | "at"> & { cdp: CDPSession }>>,
): Promise<Turns> {
  const got: Turns = { ours: [], bare: [] };
  for (let round = 0; round < ROUNDS; round += 1)
    for (const side of ["ours", "bare"] as const) {
      const { page, at, cdp } = sides[side];
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
  return got;
}

function figureOf(gesture: Gesture, { ours, bare }: Turns): Figure {
  const frames = (side: readonly Moved[]): readonly number[] => side.flatMap((one) => one.frames);
  const work = (side: readonly Moved[]): string => median(side.map((one) => one.workMs)).toFixed(1);
  return {
    work: `${gesture}, 500 marks on 48 MP, frame p95`,
    ours: quantile(frames(ours), 0.95),
    unit: "ms",
    baseline: { name: "bare Konva stage", value: quantile(frames(bare), 0.95) },
    goal: { kind: "ratio", most: 1.3 },
    note:
      `p50 ${median(frames(ours)).toFixed(1)} and ${median(frames(bare)).toFixed(1)} ms, ` +
      `processor a frame ${work(ours)} and ${work(bare)} ms`,
  };
}

/** A frame is the time between two callbacks of the browser's own animation clock. */
export async function handFigures(browser: Browser, url: string, jpeg: Buffer): Promise<readonly Figure[]> {
  const many = await beadWith(url, jpeg, { ...emptyDrawing, marks: [...manyMarks(500)] });
  const picture = Buffer.from(await (await fetch(`${url}/api/photos/${many.sha256}/view`)).arrayBuffer());
  const ours = await openOurs(browser, url, many.id);
  const bare = await openBare(browser, picture, ours.box);
  const sides = {
    ours: { ...ours, cdp: await slowed(ours.page) },
    bare: { ...bare, cdp: await slowed(bare.page) },
  };
  const figures: Figure[] = [];
  for (const gesture of gestures) figures.push(figureOf(gesture, await inTurn(gesture, sides)));
  await ours.page.context().close();
  await bare.page.context().close();
  return figures;
}
