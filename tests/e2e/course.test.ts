import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { listened } from "./support/listened";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

const root = fileURLToPath(new URL("../..", import.meta.url));
const photo = path.join(root, "demo-images/set/tee-undercut.jpg");

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

const errors: string[] = [];
async function open(device: Parameters<Browser["newContext"]>[0]): Promise<Page> {
  const page = await (await browser.newContext(device)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  page.on("pageerror", (error) => errors.push(error.message));
  return page;
}

/** A group with one student and one exercise, through the screens; the exercise's code. */
async function prepare(page: Page): Promise<string> {
  await page.goto(`${server.url}/groups`);
  await page.getByLabel("Name of the group").fill("Harrow Basin, bay 3");
  await page.getByRole("button", { name: "Make the group" }).click();
  await page.waitForURL(/\/groups\/[a-z0-9]+$/);
  await page.getByLabel("Name", { exact: true }).fill("Imke Tal");
  await page.getByLabel("Identification, if any").fill("W-07");
  await page.getByRole("button", { name: "Add student" }).click();
  await page.getByRole("link", { name: "Imke Tal (W-07)" }).waitFor();
  await page.getByRole("link", { name: "New exercise" }).click();
  await page.getByLabel("Title").fill("T-joint, one pass");
  await page.getByLabel("Aim").fill("Leg 5 mm, even toes, no undercut.");
  const list = page.getByLabel("Fill in from");
  const names = await list.locator("option").allInnerTexts();
  await list.selectOption({ label: names.find((name) => /T-joint/.test(name)) ?? "" });
  await page.getByLabel("Criteria", { exact: true }).selectOption({ index: 1 });
  await listened(page);
  await page.getByLabel(/sees the names of the group/).check();
  await shoot(page, "course-exercise-form");
  await page.getByRole("button", { name: "Save the exercise" }).click();
  await page.waitForURL(/\/exercises\/[b-z0-9]{12}$/);
  const address = await page.getByRole("link", { name: /\/hand-in\// }).innerText();
  await shoot(page, "course-exercise");
  return address.split("/").pop() ?? "";
}

/** Where a photo pixel lies on the drawing board now. */
async function spot(page: Page, x: number, y: number): Promise<{ x: number; y: number }> {
  const board = page.getByTestId("layer-canvas");
  const box = await board.boundingBox();
  const number = async (name: string) => Number(await board.getAttribute(name));
  if (!box) throw new Error("the board is not on the screen");
  const zoom = await number("data-zoom");
  return {
    x: box.x + (await number("data-pan-x")) + x * zoom,
    y: box.y + (await number("data-pan-y")) + y * zoom,
  };
}

async function drag(page: Page, from: [number, number], to: [number, number]): Promise<void> {
  const [a, b] = [await spot(page, ...from), await spot(page, ...to)];
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  await page.mouse.move((a.x + b.x) / 2, (a.y + b.y) / 2, { steps: 4 });
  await page.mouse.move(b.x, b.y, { steps: 4 });
  await page.mouse.up();
}

const items = (page: Page) => page.getByTestId("layer-canvas").getAttribute("data-items");

async function textOf(url: string): Promise<string> {
  const answer = await fetch(url);
  expect(answer.status, url).toBe(200);
  const pdf = await getDocument({ data: new Uint8Array(await answer.arrayBuffer()) }).promise;
  const pages = Array.from({ length: pdf.numPages }, async (_, i) => {
    const { items: pieces } = await (await pdf.getPage(i + 1)).getTextContent();
    return pieces.map((piece) => ("str" in piece ? piece.str : "")).join(" ");
  });
  return (await Promise.all(pages)).join(" ").replace(/\s+/g, " ");
}

describe("from hand-in to returned feedback to reply", () => {
  it("goes from the student's phone to the instructor's desk and back", async () => {
    const desk = await open(desktop);
    const code = await prepare(desk);
    const student = await open(phone);

    // Handing in, by phone, without an account.
    await student.goto(`${server.url}/hand-in/${code.toLowerCase()}`);
    await student.getByRole("button", { name: "Hand in", exact: true }).click();
    await student.getByText("Choose your name from the list first.").waitFor();
    await student.getByLabel("Who are you?").selectOption({ label: "Imke Tal (W-07)" });
    await student.getByLabel("Choose a photo").setInputFiles({
      name: "note.jpg",
      mimeType: "image/jpeg",
      buffer: Buffer.from("no picture at all"),
    });
    await student.getByRole("button", { name: "Hand in", exact: true }).click();
    await student.getByRole("form", { name: "Hand in" }).getByRole("alert").waitFor();
    expect(await beads()).toBe(0);
    await student.getByLabel("Choose a photo").setInputFiles(photo);
    await student.getByLabel(/^Voltage(?! knob)/).fill("17,5");
    await student.getByLabel(/^Note/).fill("The end came out narrow.");
    await shoot(student, "course-phone-hand-in");
    await student.getByRole("button", { name: "Hand in", exact: true }).click();
    await student.waitForURL(/\/hand-in\/[A-Z0-9]+\/.{32}$/);
    await student.getByText("Keep this page’s address").waitFor();
    const secretUrl = student.url();
    await shoot(student, "course-phone-handed-in");
    expect(
      await student
        .locator("figure img")
        .evaluate((img: HTMLImageElement) => img.decode().then(() => img.naturalWidth)),
    ).toBeGreaterThan(100);

    // The desk: draw, say, mark, return.
    await desk.goto(`${server.url}/feedback/phrases`);
    await desk.getByLabel("What you often say").fill("Fill the crater before you lift off.");
    await desk.getByRole("button", { name: "Add", exact: true }).click();
    await desk.getByLabel("Remark 1", { exact: true }).waitFor();
    await desk.goto(`${server.url}/feedback`);
    await desk.getByRole("link", { name: /Imke Tal/ }).click();
    await desk.waitForSelector('[data-testid="layer-canvas"][data-photo-state="sharp"]');
    await drag(desk, [300, 250], [600, 500]);
    await desk.getByLabel("Words at the arrow").fill("Undercut here");
    await desk.getByRole("button", { name: "Put there" }).click();
    await desk.getByRole("button", { name: "Outline" }).click();
    await drag(desk, [700, 500], [900, 650]);
    // A straight drag encloses nothing, so it is no outline; three taps and "End here" are one.
    expect(await items(desk)).toBe("1");
    for (const [atX, atY] of [
      [700, 500],
      [900, 500],
      [800, 650],
    ] as const) {
      const { x, y } = await spot(desk, atX, atY);
      await desk.mouse.click(x, y);
      await desk.waitForTimeout(400);
    }
    await desk.getByRole("button", { name: "End here" }).click();
    await expect.poll(() => items(desk)).toBe("2");
    await desk.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => items(desk)).toBe("1");
    await desk.getByRole("button", { name: "Redo" }).click();
    await expect.poll(() => items(desk)).toBe("2");

    // By keyboard alone: a text and an arrow, and the arrow gone again.
    await desk.getByTestId("layer-canvas").focus();
    await desk.keyboard.press("t");
    await desk.keyboard.press("Shift+ArrowUp");
    await desk.keyboard.press("Enter");
    await desk.getByLabel("Words on the photo").fill("Slower");
    await desk.keyboard.press("Enter");
    await expect.poll(() => items(desk)).toBe("3");
    await desk.getByTestId("layer-canvas").focus();
    await desk.keyboard.press("a");
    await desk.keyboard.press("Enter");
    await desk.keyboard.press("Shift+ArrowRight");
    await desk.keyboard.press("Enter");
    await expect.poll(() => items(desk)).toBe("4");
    // The new arrow asks for its words; Escape leaves them and the arrow is still in hand.
    await desk.getByLabel("Words at the arrow").and(desk.locator(":focus")).waitFor();
    await desk.keyboard.press("Escape");
    await desk.keyboard.press("Delete");
    await expect.poll(() => items(desk)).toBe("3");

    await desk.getByRole("button", { name: "Fill the crater before you lift off." }).click();
    await desk.getByLabel("Remark", { exact: true }).fill("Better than last week.");
    await desk.getByRole("button", { name: /Toes.*: 2 of 4/ }).click();
    await desk.getByRole("button", { name: /Size and profile.*: 4 of 4/ }).click();
    // Weights of the usual rubric: 3·4/4 + 3·2/4 = 4.5 of 10, three lines open.
    expect(await desk.getByTestId("score").innerText()).toBe("4.5 of 10, 3 lines not marked");
    await desk.waitForSelector('[data-testid="draft-state"][data-state="saved"]');
    await desk.waitForTimeout(900);
    await desk.waitForSelector('[data-testid="draft-state"][data-state="saved"]');
    await shoot(desk, "course-desk");
    await desk.reload();
    await desk.waitForSelector('[data-testid="layer-canvas"][data-photo-state="sharp"]');
    expect(await items(desk)).toBe("3");
    expect(await desk.getByLabel("Remark", { exact: true }).inputValue()).toBe("Better than last week.");
    await student.reload();
    expect(await student.getByText("Better than last week.").count()).toBe(0);
    await desk.getByRole("button", { name: "Return feedback" }).click();
    await desk.getByRole("button", { name: "Yes, return it" }).click();
    await desk.getByText(/Returned .*, frozen/).waitFor();
    expect(await desk.getByTestId("layer-canvas").count()).toBe(0);
    await shoot(desk, "course-returned");

    // Back on the phone: read and reply.
    await student.reload();
    await student.getByText("Better than last week.").waitFor();
    await student.getByRole("img", { name: /Undercut here; .*Slower/ }).waitFor();
    expect(await student.getByRole("button", { name: "Withdraw" }).count()).toBe(0);
    await student.getByLabel("Your reply").fill("I will wait at the crater.");
    await student.getByRole("button", { name: "Send the reply" }).click();
    await student.getByText("I will wait at the crater.").waitFor();
    await shoot(student, "course-phone-reply");
    await desk.reload();
    await desk.getByText("I will wait at the crater.").waitFor();

    // Paper.
    const feedbackPdf = await textOf(`${desk.url()}/feedback.pdf`);
    for (const words of [
      "Undercut here",
      "Slower",
      "Better than last week.",
      "I will wait at the crater.",
      "4.5 of 10",
    ])
      expect(feedbackPdf).toContain(words);
    expect(await textOf(`${secretUrl}/feedback.pdf`)).toContain("Better than last week.");
    await desk.goto(`${server.url}/groups`);
    await desk.getByRole("link", { name: "Harrow Basin, bay 3" }).click();
    await desk.getByRole("link", { name: "Imke Tal (W-07)" }).click();
    await desk.getByRole("link", { name: "Feedback", exact: true }).waitFor();
    await shoot(desk, "course-student");
    await desk.goBack();
    await desk.getByRole("link", { name: "T-joint, one pass" }).click();
    await desk.getByText("1 of 1 in the group have handed in.").waitFor();
    const exercise = desk.url();
    await shoot(desk, "course-class");
    const wall = await textOf(`${exercise}/class.pdf`);
    expect(wall).toContain("1 of 1");
    expect(wall).not.toMatch(/Imke|W-07/);
    await desk.goto(`${exercise}/class`);
    expect(await desk.getByRole("article").innerText()).not.toMatch(/Imke|W-07/);
    await shoot(desk, "course-wall");
    await desk.goto(`${exercise}/notice`);
    await desk.getByRole("img", { name: /Hand-in address/ }).waitFor();
    await shoot(desk, "course-notice");
    expect(errors).toEqual([]);
    await Promise.all([desk.context().close(), student.context().close()]);
  });

  const beads = async () => {
    const page = await open(desktop);
    await page.goto(server.url);
    const count = await page.locator("main ul > li").count();
    await page.context().close();
    return count;
  };
});

describe("a hand-in's door", () => {
  it("says what is wrong in a sentence, and the secret opens its own pictures only", async () => {
    const page = await open(phone);
    const code = await prepareAgain(page);
    const send = (
      at: string,
      form: unknown,
      body: Uint8Array<ArrayBuffer> = new Uint8Array(readFileSync(photo)),
    ) =>
      fetch(`${server.url}/api/hand-in/${at}`, {
        method: "POST",
        body,
        headers: { "hand-in-form": encodeURIComponent(JSON.stringify(form)) },
      });
    const form = {
      personId: null,
      givenName: "Joss",
      note: "",
      run: { wireFeedMPerMin: null, volts: null, ctwdMm: null, polarity: null },
    };
    expect((await send("NOSUCH", form)).status).toBe(404);
    expect((await send(code, { ...form, givenName: null })).status).toBe(422);
    expect((await send(code, "nonsense")).status).toBe(422);
    const large = await send(code, form, new Uint8Array(41 * 2 ** 20));
    expect(large.status).toBe(413);
    expect(await large.text()).toMatch(/40 MB/);
    const made = await send(code, form);
    expect(made.status).toBe(201);
    const { address } = (await made.json()) as { address: string };
    expect((await send(code, form)).status).toBe(409);

    await page.goto(`${server.url}${address}`);
    const src = (await page.locator("figure img").getAttribute("src")) ?? "";
    expect((await fetch(server.url + src)).headers.get("content-type")).toBe("image/jpeg");
    const wrong = address.replace(/.$/, (last) => (last === "A" ? "B" : "A"));
    expect((await fetch(server.url + src.replace(address, wrong))).status).toBe(404);
    expect((await fetch(`${server.url}${address}/photo/${"a".repeat(64)}/small`)).status).toBe(404);
    expect((await fetch(`${server.url}${wrong}`)).status).toBe(404);
    expect((await fetch(`${server.url}${address}/feedback.pdf`)).status).toBe(404);

    await page.getByRole("button", { name: "Withdraw" }).click();
    await page.getByRole("button", { name: "Yes" }).click();
    await page.getByText("Your hand-in was withdrawn.").waitFor();
    expect((await fetch(`${server.url}${address}`)).status).toBe(404);
    await page.goto(`${server.url}/hand-in/NOSUCH`);
    await page.getByText("No exercise has this code.").waitFor();
    await shoot(page, "course-phone-no-code");
    await page.context().close();
  });

  async function prepareAgain(page: Page): Promise<string> {
    await page.goto(`${server.url}/groups`);
    await page.getByLabel("Name of the group").fill("Evenings");
    await page.getByRole("button", { name: "Make the group" }).click();
    await page.waitForURL(/\/groups\/[a-z0-9]+$/);
    await page.getByRole("link", { name: "New exercise" }).click();
    await page.getByLabel("Title").fill("Lap");
    await page.getByRole("button", { name: "Save the exercise" }).click();
    await page.waitForURL(/\/exercises\/[b-z0-9]{12}$/);
    await shoot(page, "course-phone-exercise");
    const address = await page.getByRole("link", { name: /\/hand-in\// }).innerText();
    return address.split("/").pop() ?? "";
  }
});
