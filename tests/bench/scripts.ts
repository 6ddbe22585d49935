/**
 * JavaScript a page needs until it stands, gzipped, in a real Chromium. What it fetches at rest is told apart by giving it no
 * rest before it stands (`requestIdleCallback` is held back): the page has to come up without. Then it gets its rest, and what
 * comes now is the second column. What is fetched ahead for other pages is in it too; the service worker is not. Beside it the
 * same count of two bare pages built by the same Next: one with nothing on it, one with a photo on a Konva stage.
 */
import { gzipSync } from "node:zlib";
import { openBrowser, phone } from "../e2e/support/browser";
import { withoutRest } from "../e2e/support/no-rest";
import { PATIENT_MS } from "../setup/patience";
import { bareNames, withBare } from "./bare";
import type { Figure } from "./figures";
import type { Shop } from "./shop";
import { wait } from "./windows";

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
  const asked = [
    { page: "workbench", stands: CANVAS, press: TO_MARKS, name: bareNames.stage, against: stage, most: 120 },
    { page: "hand-in", stands: "form", name: bareNames.empty, against: empty, most: 60 },
    { page: "list", stands: "main li", name: bareNames.empty, against: empty, most: null },
    { page: "sheet", stands: "article", name: bareNames.empty, against: empty, most: null },
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
