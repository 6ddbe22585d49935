import { createReadStream, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { emptyExercise, emptyFeedback } from "@/lib/course";
import { openDb, type Db } from "@/lib/db";
import type { Role } from "@/lib/people";
import { receivePhoto } from "@/lib/photo";
import { createExercise, getExercise, handInPhoto, returnFeedback, saveFeedback } from "@/lib/classroom";
import { addPerson, createGroup, joinGroup } from "@/lib/roster";
import type { HandedIn } from "@/lib/classroom/hand-ins";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { signIn } from "./support/sign-in";
import { openAccountOf } from "../setup/account";
import { itDeep } from "../setup/in-depth";

const set = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set");
const passphrase = "slag-then-bead";

let server: TestServer;
let browser: Browser;
let db: Db;
const codes = { open: "", accounts: "" };
let studentId = "";
let own: HandedIn;
let others: HandedIn;

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const pen = () => ({ db, by: "test" });

async function person(name: string, role: Role): Promise<string> {
  const { id } = value(await addPerson(pen(), { name: `The ${name}`, mark: null, role }));
  await openAccountOf(pen(), id, name, passphrase);
  return id;
}

async function exercise(groupId: string, title: string, withoutAccount: boolean): Promise<string> {
  const input = { title, content: emptyExercise, open: true, withoutAccount, dueAt: null };
  const { id } = value(await createExercise(pen(), groupId, input));
  return (await getExercise(db, id))?.code ?? "";
}

async function handIn(personId: string, file: string): Promise<HandedIn> {
  const source = createReadStream(path.join(set, file));
  const stored = value(await receivePhoto(server.dataFolder, source, { declaredBytes: null }));
  const { sha256, format, bytes, widthPx, heightPx } = stored;
  const form = {
    personId: null,
    givenName: null,
    note: null,
    run: { wireFeedMPerMin: null, volts: null, ctwdMm: null, polarity: null },
  };
  const photo = { sha256, format, bytes, widthPx, heightPx };
  return value(
    await handInPhoto(db, codes.open, form, photo, { by: `person:${personId}`, signedInAs: personId }),
  );
}

const signedIn = (name: string, device: typeof desktop | typeof phone): Promise<Page> =>
  signIn(browser, server.url, { name, passphrase }, device);

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(undefined, { accounts: true }), openBrowser()]);
  process.env["TOELINE_DATA"] = server.dataFolder;
  db = openDb(server.database, server.dataFolder);
  const group = value(await createGroup(pen(), "Bay 3"));
  codes.open = await exercise(group.id, "Open to the bench", true);
  codes.accounts = await exercise(group.id, "Accounts only", false);
  const welder = await person("imke", "welder");
  studentId = welder;
  const other = await person("joss", "welder");
  await person("teacher", "instructor");
  for (const id of [welder, other]) value(await joinGroup(pen(), group.id, id));
  own = await handIn(welder, "tee-undercut.jpg");
  others = await handIn(other, "burn-through-sheet.jpg");
  for (const { handInId } of [own, others]) {
    value(await saveFeedback(pen(), handInId, 0, { ...emptyFeedback, remark: "Slower." }, null));
    value(await returnFeedback(pen(), handInId, 1, null, new Date()));
  }
});
afterAll(async () => {
  await closeWindows(browser);
  await db?.$disconnect();
  await server?.stop();
});

const plain = async (address: string) => (await fetch(server.url + address, { redirect: "manual" })).status;

describe("where accounts are asked for", () => {
  it("whoever has none reaches the bench's code and their own secret address, and nothing else", async () => {
    const secret = `/hand-in/${own.code}/${own.secret}`;
    expect(await plain(`/hand-in/${codes.open}`)).toBe(200);
    expect(await plain(secret)).toBe(200);
    expect(await plain(`${secret}/feedback.pdf`)).toBe(200);
    const page = await (await fetch(server.url + secret)).text();
    const [src = ""] = /\/hand-in\/[^"]+\/photo\/[0-9a-f]{64}\/small/.exec(page) ?? [];
    expect(await plain(src)).toBe(200);
    // One secret does not open another hand-in's picture, nor the photo's common address.
    const sha256 = src.split("/").at(-2) ?? "";
    expect(await plain(`/hand-in/${others.code}/${others.secret}/photo/${sha256}/small`)).toBe(404);
    expect(await plain(`/api/photos/${sha256}/small`)).toBe(401);
    for (const address of [
      "/groups",
      "/students",
      "/feedback",
      `/feedback/${own.handInId}`,
      `/beads/${own.beadId}`,
    ])
      expect([303, 307], address).toContain(await plain(address));
    expect(await plain(`/feedback/${own.handInId}/feedback.pdf`)).toBe(401);
  });

  it("an exercise for accounts only says so, and takes nothing", async () => {
    const page = await (await browser.newContext(phone)).newPage();
    await page.goto(`${server.url}/hand-in/${codes.accounts}`);
    await page.getByText("takes beads only from people who are signed in").waitFor();
    await shoot(page, "course-phone-needs-account");
    const sent = await fetch(`${server.url}/api/hand-in/${codes.accounts}`, {
      method: "POST",
      body: new Uint8Array(readFileSync(path.join(set, "tee-undercut.jpg"))),
    });
    expect(sent.status).toBe(401);
    await page.context().close();
  });

  it("a student reads and answers their own, and finds nothing of others or of the class", async () => {
    const page = await signedIn("imke", phone);
    const status = async (address: string) =>
      (await page.request.get(server.url + address, { maxRedirects: 0 })).status();
    for (const address of ["/groups", "/feedback", "/feedback/phrases", `/feedback/${others.handInId}`])
      expect(await status(address), address).toBe(404);
    expect(await status(`/feedback/${others.handInId}/feedback.pdf`)).toBe(403);
    await page.goto(`${server.url}/students`);
    await page.getByRole("heading", { name: "The imke" }).waitFor();
    await shoot(page, "course-phone-student");
    await page.getByRole("link", { name: "Attempt 1: new feedback" }).click();
    await page.getByText("Slower.").waitFor();
    await page.getByLabel("Your reply").fill("I will.");
    await page.getByRole("button", { name: "Send the reply" }).click();
    await page.getByText("I will.").waitFor();
    await page.goto(`${server.url}/hand-in/${codes.accounts}`);
    await page.getByText("Handing in as The imke.").waitFor();
    await page.context().close();
  });

  itDeep(
    "notices are off until they are switched on, and then tell of what came while a page is open",
    async () => {
      const page = await signedIn("imke", phone);
      await page.context().grantPermissions(["notifications"], { origin: server.url });
      // The browser's own notices cannot be looked at: what the page asks it to show is kept instead.
      await page.addInitScript(() => {
        const shown: string[] = [];
        class Kept {
          static permission = "granted";
          static requestPermission = async () => "granted";
          constructor(title: string, { body }: { body: string }) {
            shown.push(`${title}: ${body}`);
          }
        }
        Object.assign(window, { Notification: Kept, shownHere: shown });
      });
      await page.clock.install();
      const shown = () => page.evaluate(() => (window as unknown as { shownHere: string[] }).shownHere);
      const asked: string[] = [];
      page.on("response", (answer) => {
        if (answer.url().includes("/api/news")) asked.push(new URL(answer.url()).search);
      });
      await page.goto(`${server.url}/me`);
      const way = page.getByRole("group", { name: "Notices on this device" });
      await way.getByRole("button", { name: "Off", pressed: true }).waitFor();
      await page.clock.fastForward(120_000);
      expect(asked).toEqual([]);
      await way.getByRole("button", { name: "On" }).click();
      await way.getByRole("button", { name: "On", pressed: true }).waitFor();
      await shoot(page, "course-phone-notices");
      await expect.poll(() => asked).toEqual([""]);
      const again = await handIn(studentId, "lap-cold-lap.jpg");
      value(await saveFeedback(pen(), again.handInId, 0, { ...emptyFeedback, remark: "Hotter." }, null));
      value(await returnFeedback(pen(), again.handInId, 1, null, new Date()));
      await page.clock.fastForward(31_000);
      await expect.poll(shown).toEqual(["Feedback came back: Open to the bench"]);
      // What was told is not told again.
      await page.clock.fastForward(31_000);
      await expect.poll(() => asked.length).toBe(3);
      expect(await shown()).toHaveLength(1);
      await page.context().close();
    },
  );

  it("an instructor reads the class and cannot speak in a student's place", async () => {
    const page = await signedIn("teacher", desktop);
    await page.goto(`${server.url}/feedback/${own.handInId}`);
    await page.getByText(/Returned .*, frozen/).waitFor();
    expect(await page.getByLabel(/Your reply|Write it anew/).count()).toBe(0);
    await page.goto(`${server.url}/groups`);
    await page.getByRole("link", { name: "Bay 3" }).click();
    await page.getByRole("heading", { name: "The class, all exercises" }).waitFor();
    await shoot(page, "course-group");
    await page.context().close();
  });
});
