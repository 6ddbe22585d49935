/**
 * Frames and main-thread time while a photo with 500 marks is panned and zoomed, beside a bare Konva stage of the same
 * size with the same picture and nothing else, in turns in one browser. Needs a build: `npm run -s bench:pan`.
 */
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { CDPSession, Page } from "playwright-core";
import type { BeadContent } from "@/lib/assess";
import { newMark } from "@/lib/marks";
import { imperfectionIds } from "@/lib/trade";
import { Bench } from "../../e2e/support/bench";
import { desktop, openBrowser } from "../../e2e/support/browser";
import { startServer } from "../../e2e/support/server";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const ROUNDS = 5;
const MARKS = 500;
const STEPS = 90;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
interface Sample {
  readonly frameMs: number;
  readonly taskMs: number;
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

async function taskSeconds(cdp: CDPSession): Promise<number> {
  const { metrics } = await cdp.send("Performance.getMetrics");
  return metrics.find(({ name }) => name === "TaskDuration")?.value ?? 0;
}

/** Frames while `act` runs: the median between two, and the main thread's work for each. */
async function during(page: Page, cdp: CDPSession, act: () => Promise<void>): Promise<Sample> {
  await page.evaluate(() => {
    const kept: number[] = [];
    Object.assign(window, { kept });
    const next = (at: number) => {
      kept.push(at);
      if (kept.length < 5000) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  const before = await taskSeconds(cdp);
  await act();
  const work = (await taskSeconds(cdp)) - before;
  const frames = await page.evaluate(() => {
    const { kept } = window as unknown as { kept: number[] };
    const all = [...kept];
    // No further frames are asked for.
    kept.length = 5000;
    return all;
  });
  const gaps = frames.slice(1).map((at, i) => at - frames[i]!);
  return { frameMs: median(gaps), taskMs: (work * 1000) / Math.max(1, gaps.length) };
}

async function pan(page: Page, { x, y, width, height }: Box): Promise<void> {
  const [cx, cy] = [x + width / 2, y + height / 2];
  await page.mouse.move(cx, cy);
  await page.mouse.down();
  for (let i = 1; i <= STEPS; i++)
    await page.mouse.move(cx + 160 * Math.sin(i / 9), cy + 90 * Math.sin(i / 7));
  await page.mouse.up();
}

async function zoom(page: Page, { x, y, width, height }: Box): Promise<void> {
  await page.mouse.move(x + width / 2, y + height / 2);
  for (let i = 0; i < STEPS; i++) await page.mouse.wheel(0, Math.floor(i / 10) % 2 === 0 ? -60 : 60);
}

/** A bead with many marks over the whole photo, opened. */
async function ourBench(page: Page, url: string): Promise<{ box: Box; view: string }> {
  const bench = new Bench(page);
  await bench.newBead(url);
  await bench.addPhoto(path.join(root, "demo-images/set/tee-porosity-soot.jpg"));
  await bench.photoShown();
  await page.getByText("Saved").first().waitFor();
  const api = page.url().replace("/beads/", "/api/beads/");
  const { revision, content } = (await (await page.request.get(api)).json()) as {
    revision: number;
    content: BeadContent;
  };
  const marks = Array.from({ length: MARKS }, (_, i) =>
    newMark(`m${i}`, imperfectionIds[i % 12]!, {
      kind: "line",
      points: Array.from({ length: 4 }, (_, k) => ({
        x: 60 + ((i * 73) % 1600) + 22 * k,
        y: 60 + ((i * 37) % 1200) + 9 * Math.sin(i + k),
      })),
    }),
  );
  const photos = content.photos.map((photo) => ({ ...photo, drawing: { ...photo.drawing, marks } }));
  const put = await page.request.put(api, { data: { basedOn: revision, content: { ...content, photos } } });
  if (put.status() !== 200) throw new Error(await put.text());
  await page.goto(page.url());
  await bench.photoShown();
  await bench.tool("Move");
  return { box: (await bench.canvas.boundingBox())!, view: await viewOf(page, url) };
}

async function viewOf(page: Page, url: string): Promise<string> {
  const name = await page.evaluate(
    () =>
      performance
        .getEntriesByType("resource")
        .map(({ name: address }) => address)
        .find((address) => /\/api\/photos\/[0-9a-f]+\/view/.test(address)) ?? "",
  );
  return new URL(name, url).href;
}

/** A stage that drags and zooms a picture, as the library's own examples do. */
async function bareStage(page: Page, url: string, view: string, box: Box): Promise<void> {
  await page.goto(`${url}/api/health`);
  await page.setContent(
    `<div id="stage" style="position:absolute;left:${box.x}px;top:${box.y}px;width:${box.width}px;height:${box.height}px"></div>`,
  );
  await page.addScriptTag({ path: path.join(root, "node_modules/konva/konva.min.js") });
  await page.evaluate(
    async ({ view: address, width, height }) => {
      const image = new Image();
      image.src = address;
      await image.decode();
      const { Konva } = window as unknown as { Konva: typeof import("konva").default };
      const stage = new Konva.Stage({ container: "stage", width, height, draggable: true });
      const layer = new Konva.Layer({ listening: false });
      layer.add(new Konva.Image({ image, width: image.naturalWidth, height: image.naturalHeight }));
      stage.add(layer);
      const fit = Math.min(width / image.naturalWidth, height / image.naturalHeight);
      stage.scale({ x: fit, y: fit });
      stage.on("wheel", ({ evt }) => {
        evt.preventDefault();
        const factor = Math.exp(-evt.deltaY * 0.002);
        const at = stage.getPointerPosition()!;
        const old = stage.scaleX();
        const under = { x: (at.x - stage.x()) / old, y: (at.y - stage.y()) / old };
        stage.scale({ x: old * factor, y: old * factor });
        stage.position({ x: at.x - under.x * old * factor, y: at.y - under.y * old * factor });
      });
    },
    { view, width: box.width, height: box.height },
  );
}

async function session(page: Page): Promise<CDPSession> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send("Performance.enable");
  return cdp;
}

const server = await startServer();
const browser = await openBrowser();
const ours = await (await browser.newContext(desktop)).newPage();
const bare = await (await browser.newContext(desktop)).newPage();
ours.setDefaultTimeout(120_000);
const { box, view } = await ourBench(ours, server.url);
await bareStage(bare, server.url, view, box);
const [ourCdp, bareCdp] = [await session(ours), await session(bare)];
for (const [name, act] of [
  ["pan", pan],
  ["zoom", zoom],
] as const) {
  const samples: { ours: Sample; bare: Sample }[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    await bare.bringToFront();
    const without = await during(bare, bareCdp, () => act(bare, box));
    await ours.bringToFront();
    samples.push({ bare: without, ours: await during(ours, ourCdp, () => act(ours, box)) });
  }
  const of = (which: "ours" | "bare", what: keyof Sample) => median(samples.map((one) => one[which][what]));
  const line = (what: keyof Sample, words: string) =>
    `${name}, ${words}: ours ${of("ours", what).toFixed(1)} ms, bare stage ${of("bare", what).toFixed(1)} ms, ` +
    `ratio ${(of("ours", what) / of("bare", what)).toFixed(2)}`;
  process.stdout.write(`${line("frameMs", "frame p50")}\n${line("taskMs", "main thread a frame")}\n`);
}
await browser.close();
await server.stop();
