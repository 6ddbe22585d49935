import { createReadStream } from "node:fs";
import path from "node:path";
import { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { addPhrase, createExercise, getExercise, handInPhoto } from "@/lib/classroom";
import { emptyExercise } from "@/lib/course";
import { openDb, type Db } from "@/lib/db";
import { receivePhoto } from "@/lib/photo";
import { addStudent, createGroup } from "@/lib/roster";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { inDepth } from "../setup/in-depth";
import { PATIENT_MS } from "../setup/patience";

const set = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set");
/** Rows of five, whose beads differ in what is not all there: the deep run answers a whole class. */
const ROWS = inDepth(1, 3);
const STUDENTS = 5 * ROWS;
/** The link to the desk, then for each an arrow, its phrase, R, up to two lines, the return. */
const PRESSES = 1 + ROWS * (4 + 5 + 6 + 4 + 5);
const UNDERCUTS = Math.ceil(STUDENTS / 3);

let server: TestServer;
let browser: Browser;
let db: Db;
let groupId: string;
let exerciseId: string;
const pen = () => ({ db, by: "test" });

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** One real photo; the others are plain grey ones, each of its own grey: the desk is counted, not the pictures. */
async function photoOf(i: number): Promise<NodeJS.ReadableStream> {
  if (i === 0) return createReadStream(path.join(set, "tee-undercut.jpg"));
  const background = { r: 90 + i, g: 90 + i, b: 90 + i };
  const grey = sharp({ create: { width: 640, height: 480, channels: 3, background } });
  return Readable.from(await grey.jpeg().toBuffer());
}

async function handIns(code: string, personIds: readonly string[]): Promise<void> {
  for (const [i, personId] of personIds.entries()) {
    const source = (await photoOf(i)) as Readable;
    const stored = value(await receivePhoto(server.dataFolder, source, { declaredBytes: null }));
    const { sha256, format, bytes, widthPx, heightPx } = stored;
    const run = { wireFeedMPerMin: null, volts: 17 + i / 10, ctwdMm: null, polarity: null };
    const form = { personId, givenName: null, note: `Bead ${i + 1}: the end came out narrow.`, run };
    const photo = { sha256, format, bytes, widthPx, heightPx };
    value(await handInPhoto(db, code, form, photo, { by: null, signedInAs: null }));
  }
}

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  process.env["TOELINE_DATA"] = server.dataFolder;
  db = openDb(server.database, server.dataFolder);
  groupId = value(await createGroup(pen(), "Bay 3")).id;
  const people: string[] = [];
  for (let i = 1; i <= STUDENTS; i += 1) {
    const mark = `W-${String(i).padStart(2, "0")}`;
    people.push(value(await addStudent(pen(), groupId, { name: `Student ${mark}`, mark })).id);
  }
  const input = {
    title: "T-joint, one pass",
    content: { ...emptyExercise, joint: "tee" as const, position: "horizontal" as const },
    open: true,
    withoutAccount: true,
    dueAt: "2026-12-01T01:00:00.000Z",
  };
  exerciseId = value(await createExercise(pen(), groupId, input)).id;
  await handIns((await getExercise(db, exerciseId))!.code, people);
  for (const text of ["Undercut: shorten the arc", "Fill the crater before you lift off.", "Even, go on so."])
    value(await addPhrase(pen(), text, null));
});
afterAll(async () => {
  await closeWindows(browser);
  await db?.$disconnect();
  await server?.stop();
});

/** Every key and every button of the mouse that goes down, counted by the page itself. */
async function countPresses(page: Page): Promise<() => Promise<{ presses: number; scrolls: number }>> {
  let before = { presses: 0, scrolls: 0 };
  await page.exposeFunction("pressed", (kind: "presses" | "scrolls") => {
    before = { ...before, [kind]: before[kind] + 1 };
  });
  await page.addInitScript(() => {
    const tell = (window as unknown as { pressed: (kind: string) => void }).pressed;
    document.addEventListener("keydown", () => tell("presses"), true);
    document.addEventListener("pointerdown", () => tell("presses"), true);
    document.addEventListener("wheel", () => tell("scrolls"), true);
    document.addEventListener("scroll", () => tell("scrolls"), true);
  });
  return async () => {
    await page.evaluate(() => undefined);
    return before;
  };
}

const boxOf = async (page: Page) => {
  const box = await page.getByTestId("layer-canvas").boundingBox();
  if (!box) throw new Error("the board is not on the screen");
  return box;
};

/** Fewest presses for an arrow with words, a rubric of five lines with one that is not all there, and the return. */
async function answerOne(page: Page, i: number): Promise<void> {
  await page.waitForSelector('[data-testid="layer-canvas"]');
  const box = await boxOf(page);
  await page.mouse.move(box.x + box.width * 0.3, box.y + box.height * 0.3);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.45, { steps: 3 });
  await page.mouse.up();
  // The words take the focus, so a number is a phrase there; the photo stays where it is.
  await page.getByLabel("Words at the arrow").and(page.locator(":focus")).waitFor();
  expect(await boxOf(page)).toEqual(box);
  await page.keyboard.press(String((i % 3) + 1));
  await page.waitForSelector('[data-testid="layer-canvas"][data-items="1"]');
  await page.keyboard.press("r");
  // Of five beads two have all lines there, two have one line a quarter less, one has two.
  for (const key of [[], ["2"], ["2", "5"], [], ["3"]][i % 5] ?? []) await page.keyboard.press(key);
  const button = page.getByRole("button", { name: /^Return/ });
  expect(await boxOf(page)).toEqual(box);
  // Empty at once where no such text is there: after the last one there is none to wait for.
  const place = async () => (await page.getByText(/^\d+ of \d+$/).allInnerTexts()).join();
  const at = await place();
  await button.click();
  await expect.poll(place).not.toBe(at);
}

describe("the desk for a class", () => {
  it(`answers ${STUDENTS} hand-ins in ${PRESSES} presses without scrolling, and the photo never moves`, async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(error.message));
    const counted = await countPresses(page);
    await page.goto(`${server.url}/groups/${groupId}`);
    await page.getByRole("link", { name: `Give feedback, ${STUDENTS} waiting` }).click();
    for (let i = 0; i < STUDENTS; i += 1) {
      if (i === 0) {
        await page.waitForSelector('[data-testid="layer-canvas"][data-photo-state="sharp"]');
        expect(await page.getByText("Bead 1: the end came out narrow.").isVisible()).toBe(true);
        expect(await page.getByText("This is the first.").isVisible()).toBe(true);
        await shoot(page, "desk-class");
      }
      await answerOne(page, i);
    }
    await page.getByText(/Returned .*, frozen/).waitFor();
    const { presses, scrolls } = await counted();
    expect(scrolls).toBe(0);
    expect(presses).toBe(PRESSES);
    expect(errors).toEqual([]);
    expect(await db.feedback.count({ where: { returnedAt: { not: null } } })).toBe(STUDENTS);
    await page.context().close();
  });

  it("the score is found on class, student, wall, gradebook, CSV and API", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    // Second of the row: line 2 (weight 3 of 10) a quarter less: 9.25 of 10.
    const person = await db.person.findFirstOrThrow({ where: { mark: "W-02" } });
    const textOf = async (address: string) => {
      await page.goto(server.url + address);
      return (await page.locator("main, article").first().innerText()).replace(/\s+/g, " ");
    };
    expect(await textOf(`/exercises/${exerciseId}`)).toContain("93 %");
    expect(await textOf(`/students/${person.id}`)).toContain("9.25 of 10 (93 %)");
    expect(await textOf(`/students/${person.id}/record`)).toContain("9.25 of 10 (93 %)");
    expect(await textOf(`/exercises/${exerciseId}/class`)).toContain(
      `Mean score by the rubric, of ${STUDENTS}`,
    );
    expect(await textOf(`/groups/${groupId}`)).toContain(`Feedback returned: ${STUDENTS}`);
    expect(await textOf(`/groups/${groupId}/grades`)).toMatch(/Student W-02 \(W-02\) 93 % returned/);
    await shoot(page, "desk-gradebook");
    const csv = await (await fetch(`${server.url}/api/groups/${groupId}/grades.csv`)).text();
    expect(csv).toMatch(
      /Student W-02,W-02,"T-joint, one pass",returned,1,no,[^,]+,9\.25,10,0\.925,4,3,4,4,4/,
    );
    const grades = (await (await fetch(`${server.url}/api/groups/${groupId}/grades`)).json()) as {
      students: { mark: string; mean: number; exercises: { words: string }[] }[];
    };
    const own = grades.students.find(({ mark }) => mark === "W-02");
    expect(own).toMatchObject({ mean: 0.925, exercises: [{ words: "9.25 of 10 (93 %)" }] });
    // One drawing serves as feedback and as mark: a phrase in three names an undercut.
    expect(await textOf(`/exercises/${exerciseId}`)).toContain(`Undercut ${UNDERCUTS} of ${STUDENTS}`);
    await page.setViewportSize(phone.viewport);
    await page.goto(`${server.url}/groups/${groupId}/grades`);
    await shoot(page, "desk-phone-gradebook");
    await page.context().close();
  });
});

/** The ordinary run has the first; each next one finds what the one before set. */
const zones = <Zone>(all: readonly Zone[]): readonly Zone[] => all.slice(0, inDepth(1, 3));

describe("the day an exercise is due", () => {
  it.each(
    zones([
      ["America/Denver", "30 November 2026, 18:00 (Denver time)"],
      ["Europe/Berlin", "1 December 2026, 02:00 (Berlin time)"],
      ["Australia/Sydney", "1 December 2026, 12:00 (Sydney time)"],
    ]),
  )("is read by the clock of %s", async (timezoneId, words) => {
    const page = await (await browser.newContext({ ...phone, timezoneId })).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await page.goto(`${server.url}/exercises/${exerciseId}`);
    await page.getByText(words).waitFor();
    await page.context().close();
  });

  // A clock on the wall: 9 in the morning is 16:00 UTC in Denver, 08:00 in Berlin, 22:00 of the day before in Sydney.
  it.each(
    zones([
      ["America/Denver", "2026-11-30T18:00", "2026-11-30T16:00:00.000Z", "Denver"],
      ["Europe/Berlin", "2026-11-30T17:00", "2026-11-30T08:00:00.000Z", "Berlin"],
      ["Australia/Sydney", "2026-11-30T19:00", "2026-11-29T22:00:00.000Z", "Sydney"],
    ]),
  )("is set by the clock of %s, whoever set it before", async (timezoneId, shown, stored, place) => {
    const page = await (await browser.newContext({ ...desktop, timezoneId })).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await page.goto(`${server.url}/exercises/${exerciseId}/edit`);
    const due = page.getByLabel("Due, if there is a date");
    await expect.poll(() => due.inputValue()).toBe(shown);
    await due.fill("2026-11-30T09:00");
    await page.getByRole("button", { name: "Save the exercise" }).click();
    await page.waitForURL((url) => !url.pathname.endsWith("/edit"));
    await page.getByText(`30 November 2026, 09:00 (${place} time)`).waitFor();
    expect((await getExercise(db, exerciseId))?.dueAt).toBe(stored);
    await page.context().close();
  });
});
