/**
 * What the workbench takes to say something new, its processor slowed four times: from the name of a thirteenth mark to the
 * frame in which it has its size and the bead its answer, and from a key in a field of the set-up to the next paint.
 */
import type { Browser, Page } from "playwright-core";
import { emptyDrawing, type Drawing } from "@/lib/marks";
import { beadWith, manyMarks } from "./beads";
import { median, type Figure } from "./figures";
import { openOurs, slowed, SLOWED, wait } from "./windows";

const TURNS = 7;

/** From the press on a name in the picker to the frame in which the new mark has its size and the bead its answer. */
async function markToAnswer(browser: Browser, url: string, id: string): Promise<readonly number[]> {
  const { page, at } = await openOurs(browser, url, id);
  await slowed(page);
  const took: number[] = [];
  for (let turn = 0; turn < TURNS; turn += 1) {
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

/** Of each key the time to the paint after it, as the browser's own Event Timing tells it (steps of 8 ms). */
async function keyToPaint(page: Page): Promise<readonly number[]> {
  await page
    .getByRole("button", { name: /^Set-up/ })
    .first()
    .click();
  const field = page.getByLabel(/^Voltage(?! knob)/);
  await field.click();
  await wait(1500);
  await page.evaluate(() => {
    const keys: number[] = [];
    Object.assign(globalThis, { keys });
    new PerformanceObserver((list) => {
      for (const { name, duration } of list.getEntries()) if (name === "keydown") keys.push(duration);
    }).observe({ type: "event", durationThreshold: 16 } as PerformanceObserverInit);
  });
  const keys = ["Backspace", "1", "Backspace", "2", "Backspace", "3", "Backspace", "4", "Backspace", "5"];
  for (const key of keys) {
    await page.keyboard.press(key);
    await wait(900);
  }
  return page.evaluate(() => (globalThis as unknown as { keys: number[] }).keys);
}

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

const listed = (took: readonly number[]): string =>
  took.map((ms) => Math.round(ms)).join(", ") + `; processor slowed ${SLOWED} times`;

export async function answerFigures(browser: Browser, url: string, jpeg: Buffer): Promise<readonly Figure[]> {
  const twelve = await beadWith(url, jpeg, {
    ...emptyDrawing,
    scale,
    weldLine,
    marks: [...manyMarks(12)],
  });
  const goal = { kind: "most", most: 100 } as const;
  const marked = await markToAnswer(browser, url, twelve.id);
  const opened = await openOurs(browser, url, twelve.id);
  await slowed(opened.page);
  const typed = await keyToPaint(opened.page);
  await opened.page.context().close();
  const unit = "ms";
  return [
    {
      ...{ work: "mark named to updated answer, 12 marks", ours: median(marked), unit, goal },
      baseline: null,
      note: listed(marked),
    },
    {
      ...{ work: "key in a set-up field to the next paint", ours: median(typed), unit, goal },
      baseline: null,
      note: listed(typed),
    },
  ];
}
