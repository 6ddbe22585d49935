import { createReadStream } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createExercise, getExercise, handInPhoto } from "@/lib/classroom";
import { emptyExercise } from "@/lib/course";
import { openDb, type Db } from "@/lib/db";
import { createInspection, createJob, saveInspection } from "@/lib/jobs";
import { receivePhoto } from "@/lib/photo";
import { addPerson, changePerson, createGroup, joinGroup } from "@/lib/roster";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { listened } from "./support/listened";
import { startServer, type TestServer } from "./support/server";
import { signIn } from "./support/sign-in";
import { openAccountOf } from "../setup/account";
import { itDeep } from "../setup/in-depth";

const set = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set");
const passphrase = "slag-then-bead";

let server: TestServer;
let browser: Browser;
let db: Db;
let [imke, inspectionId, own, others] = ["", "", "", ""];

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const pen = () => ({ db, by: "test" });

async function handIn(code: string, personId: string, file: string): Promise<string> {
  const source = createReadStream(path.join(set, file));
  const { sha256, format, bytes, widthPx, heightPx } = value(
    await receivePhoto(server.dataFolder, source, { declaredBytes: null }),
  );
  const run = { wireFeedMPerMin: null, volts: null, ctwdMm: null, polarity: null };
  const form = { personId, givenName: null, note: null, run };
  const by = { by: `person:${personId}`, signedInAs: personId };
  return value(await handInPhoto(db, code, form, { sha256, format, bytes, widthPx, heightPx }, by)).handInId;
}

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(undefined, { accounts: true }), openBrowser()]);
  process.env["TOELINE_DATA"] = server.dataFolder;
  db = openDb(server.database, server.dataFolder);
  const owner = value(await addPerson(pen(), { name: "Odo Marsh", mark: null, role: "owner" }));
  await openAccountOf(pen(), owner.id, "odo", passphrase);
  imke = value(await addPerson(pen(), { name: "Imke Tal", mark: "W-07", role: "instructor" })).id;
  await openAccountOf(pen(), imke, "imke", passphrase);
  const student = value(await addPerson(pen(), { name: "Joss Lund", mark: "W-08", role: "welder" })).id;
  const group = value(await createGroup(pen(), "Bay 3")).id;
  for (const id of [imke, student]) value(await joinGroup(pen(), group, id));
  const exercise = {
    title: "Tee, flat",
    content: emptyExercise,
    open: true,
    withoutAccount: true,
    dueAt: null,
  };
  const { code } = (await getExercise(db, value(await createExercise(pen(), group, exercise)).id))!;
  own = await handIn(code, imke, "tee-undercut.jpg");
  others = await handIn(code, student, "burn-through-sheet.jpg");
  const welds = [{ id: "w1", number: "W1", welderId: imke }];
  const job = value(await createJob(pen(), { title: "Bracket run 4", welds })).id;
  inspectionId = value(await createInspection(pen(), job)).id;
  const seen = { kind: "percent", percent: 100 };
  value(
    await saveInspection(pen(), inspectionId, 1, {
      examinedOn: "2026-11-26",
      welds: [{ weldId: "w1", seen }],
    }),
  );
});
afterAll(async () => {
  await closeWindows(browser);
  await db?.$disconnect();
  await server?.stop();
});

/** Nothing runs out of the page to the side. */
async function fits(page: Page): Promise<void> {
  const [wide, scroll] = await page.evaluate(() => [innerWidth, document.documentElement.scrollWidth]);
  expect(scroll).toBeLessThanOrEqual(wide ?? 0);
}

describe("one person who teaches, inspects and welds", () => {
  it("is given the further roles on the page of people, each told what it may do", async () => {
    const page = await signIn(browser, server.url, { name: "odo", passphrase }, desktop);
    await page.goto(`${server.url}/people`);
    const panel = page.locator("section", { has: page.getByRole("heading", { name: "Imke Tal" }) });
    await panel.getByText("Change", { exact: true }).click();
    await listened(page);
    await panel.getByRole("checkbox", { name: /Inspector/ }).check();
    await panel.getByRole("checkbox", { name: /Student or welder/ }).check();
    expect(await panel.getByLabel("Mainly").inputValue()).toBe("instructor");
    for (const line of await panel.locator("fieldset label").all())
      expect((await line.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await shoot(page, "people-roles-desktop");
    await panel.getByRole("button", { name: "Save" }).click();
    await panel.getByText("They sign as soon as they have a key").waitFor();
    await panel.getByText("Instructor, inspector, student or welder · W-07 · can sign in").waitFor();
    // The last owner stays one.
    const odo = page.locator("section", { has: page.getByRole("heading", { name: "Odo Marsh" }) });
    await odo.getByText("Change", { exact: true }).click();
    await odo.getByRole("checkbox", { name: /Owner/ }).uncheck();
    await odo.getByRole("checkbox", { name: /Instructor/ }).check();
    await odo.getByRole("button", { name: "Save" }).click();
    await odo.getByText("This is the last owner with an account").waitFor();
    await page.context().close();
  });

  itDeep("teaches and inspects on a phone with one account, and what is their own says so", async () => {
    let page = await signIn(browser, server.url, { name: "imke", passphrase }, phone);
    const desks = page.getByRole("navigation", { name: "Your desks" });
    expect(await desks.getByRole("link").allInnerTexts()).toEqual([
      "Handed in",
      "Jobs and inspections",
      "Your exercises",
    ]);
    await fits(page);
    await shoot(page, "one-person-start-phone");
    // What has no room in the bar stands under "More".
    await page.getByRole("button", { name: "More" }).first().click();
    const more = page.getByRole("navigation", { name: "More of Toeline" });
    for (const name of ["Your exercises", "Groups and exercises", "Trends"])
      await more.getByRole("link", { name }).waitFor();
    // The key of the further role begins with a passphrase of their own.
    await page.goto(`${server.url}/me`);
    await page.getByText("no key to do it with yet").waitFor();
    await page.getByLabel("Passphrase until now").fill(passphrase);
    await page.getByLabel("New passphrase").fill("eleven copper kettles");
    await page.getByRole("button", { name: "Change passphrase" }).click();
    await page.waitForURL(/\/sign-in/);
    await page.context().close();
    page = await signIn(browser, server.url, { name: "imke", passphrase: "eleven copper kettles" }, phone);

    // The instructor.
    await page
      .getByRole("navigation", { name: "Your desks" })
      .getByRole("link", { name: "Handed in" })
      .click();
    await page.getByRole("link", { name: "One after the other" }).click();
    await page.waitForURL(`${server.url}/feedback/${others}`);
    await page.getByLabel("Remark", { exact: true }).fill("Slower at the end.");
    await page.waitForSelector('[data-testid="draft-state"][data-state="saved"]');
    await page.getByRole("button", { name: "Return feedback" }).click();
    await page.getByRole("button", { name: "Yes, return it" }).click();
    await page.getByText(/Returned .*, frozen/).waitFor();
    const returned = await db.feedback.findUniqueOrThrow({ where: { handInId: others } });
    expect(returned.authorId).toBe(imke);
    await page.goto(`${server.url}/feedback/${own}`);
    await page.getByText("This bead is your own").waitFor();
    expect(await page.getByTestId("layer-canvas").count()).toBe(0);
    await shoot(page, "one-person-own-hand-in-phone");

    // The inspector.
    await page.goto(`${server.url}/inspections/${inspectionId}`);
    await page.getByText("You ran weld W1.").waitFor();
    await fits(page);
    await page.getByLabel("What you say to the open points").fill("Seen; they stay open.");
    await page.getByLabel("Passphrase of the inspector").fill("eleven copper kettles");
    await page.getByText("You ran weld W1.").scrollIntoViewIfNeeded();
    await shoot(page, "one-person-sign-phone");
    await page.getByRole("button", { name: "Sign the record" }).click();
    const signature = page.getByText("Inspected by the welder: whoever signed ran weld W1.");
    await signature.waitFor();
    await page.getByText(/Signed in the role of inspector\./).waitFor();
    await signature.scrollIntoViewIfNeeded();
    await shoot(page, "one-person-signed-phone");
    expect((await db.signedRevision.findFirstOrThrow()).signedById).toBe(imke);

    // The welder.
    await page.goto(`${server.url}/students/${imke}`);
    await page.getByRole("heading", { name: "Imke Tal" }).waitFor();
    await page.getByText("Tee, flat").first().waitFor();
    await page.context().close();
  });

  itDeep("keeps the record when a role is taken away, and not the desk", async () => {
    const page = await signIn(
      browser,
      server.url,
      { name: "imke", passphrase: "eleven copper kettles" },
      phone,
    );
    const jobs = async () => (await page.request.get(`${server.url}/jobs`)).status();
    expect(await jobs()).toBe(200);
    value(
      await changePerson(pen(), imke, {
        name: "Imke Tal",
        mark: "W-07",
        role: "instructor",
        also: ["welder"],
      }),
    );
    expect(await jobs()).toBe(404);
    const [key] = await db.keyEvent.findMany({ where: { what: "ended" } });
    expect(key?.reason).toBe("role-ended");
    expect((await db.signedRevision.findFirstOrThrow()).signedById).toBe(imke);
    await page.context().close();
  });
});
