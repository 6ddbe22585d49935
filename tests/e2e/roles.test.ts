import { createReadStream } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page, Route } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeToken } from "@/lib/account";
import { openDb, type Db } from "@/lib/db";
import { roles, type Role, type Scope } from "@/lib/people";
import { receivePhoto } from "@/lib/photo";
import { addPhoto, createBead } from "@/lib/beads";
import { createInspection, createJob } from "@/lib/jobs";
import { paperCertificates } from "@/lib/keys";
import { addPerson } from "@/lib/roster";
import { verifyRecords } from "@/lib/verify";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { signIn } from "./support/sign-in";
import { openAccountOf } from "../setup/account";
import { inDepth, itDeep } from "../setup/in-depth";

const picture = path.join(
  fileURLToPath(new URL("../..", import.meta.url)),
  "demo-images/set/tee-undercut.jpg",
);
const passphrase = "slag-then-bead";

let server: TestServer;
let browser: Browser;
let db: Db;
const people = {} as Record<Role | "other", { id: string; userId: string }>;
const pages = {} as Record<Role, Page>;
let own = "";
let others = "";
let sha256 = "";

async function person(signInName: string, role: Role): Promise<{ id: string; userId: string }> {
  const pen = { db, by: "test" };
  const made = await addPerson(pen, { name: `The ${signInName}`, mark: null, role });
  if (!made.ok) throw new Error("no person");
  const userId = await openAccountOf(pen, made.value.id, signInName, passphrase);
  return { id: made.value.id, userId };
}

async function bead(welderId: string): Promise<string> {
  const pen = { db, by: "test" };
  const made = await createBead(pen, { welderId });
  const stored = await receivePhoto(server.dataFolder, createReadStream(picture), { declaredBytes: null });
  if (!made.ok || !stored.ok) throw new Error("no bead");
  const { format, bytes, widthPx, heightPx } = stored.value;
  ({ sha256 } = stored.value);
  if (welderId === people.other.id)
    await addPhoto(pen, made.value.id, { sha256, format, bytes, widthPx, heightPx }, "face");
  return made.value.id;
}

const signedIn = (name: string, device: typeof desktop | typeof phone): Promise<Page> =>
  signIn(browser, server.url, { name, passphrase }, device);

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(undefined, { accounts: true }), openBrowser()]);
  process.env["TOELINE_DATA"] = server.dataFolder;
  db = openDb(server.database, server.dataFolder);
  for (const role of roles) people[role] = await person(role, role);
  people.other = await person("other", "welder");
  await person("second", "inspector");
  own = await bead(people.welder.id);
  others = await bead(people.other.id);
  for (const role of roles) pages[role] = await signedIn(role, role === "welder" ? phone : desktop);
});
afterAll(async () => {
  await closeWindows(browser);
  await db?.$disconnect();
  await server?.stop();
});

/** What a signed-in role gets, through its own browser's cookies. */
const status = async (role: Role, address: string, method = "GET"): Promise<number> =>
  (
    await pages[role].request.fetch(`${server.url}${address}`, {
      method,
      maxRedirects: 0,
      ...(method === "PUT" ? { data: { basedOn: 1, content: {} } } : {}),
    })
  ).status();

interface Sent {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

/** A server action's request as the page made it, stopped before it reached the server. */
async function stopped(page: Page, press: () => Promise<void>): Promise<Sent> {
  return new Promise((resolve, reject) => {
    const catchIt = (route: Route): void => {
      const request = route.request();
      if (request.method() !== "POST") return void route.continue();
      const headers = Object.entries(request.headers()).filter(([name]) =>
        ["next-action", "next-router-state-tree", "content-type", "accept"].includes(name),
      );
      void route.abort();
      resolve({
        url: request.url(),
        headers: Object.fromEntries(headers),
        body: request.postDataBuffer()?.toString("utf8") ?? "",
      });
    };
    // What was stopped once is sent again by the page itself: the way stays shut until the next one is caught.
    page
      .unroute("**/*")
      .then(() => page.route("**/*", catchIt))
      .then(press)
      .catch(reject);
  });
}

/** The same request in another's name; what the server says to it. */
async function sendFrom(page: Page, { url, headers, body }: Sent): Promise<string> {
  const answer = await page.request.fetch(url, {
    method: "POST",
    headers: { ...headers, origin: server.url },
    data: Buffer.from(body, "utf8"),
    maxRedirects: 0,
  });
  return answer.text();
}
const send = (role: Role, sent: Sent) => sendFrom(pages[role], sent);

describe("who may what, through the doors", () => {
  it("a stranger is asked to sign in on pages and refused by the API", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    for (const address of ["/", `/beads/${own}`, `/beads/${own}/sheet`, "/people", "/log", "/tokens"]) {
      await page.goto(`${server.url}${address}`);
      expect(page.url(), address).toBe(`${server.url}/sign-in`);
    }
    for (const address of [
      `/api/beads/${own}`,
      `/api/beads/${own}/sheet.pdf`,
      `/api/photos/${sha256}/small`,
      "/api/diagnose",
    ])
      expect((await page.request.get(`${server.url}${address}`)).status(), address).toBe(401);
    await shoot(page, "sign-in-desktop");
  });

  itDeep("a wrong passphrase is refused in a sentence, and guessing is slowed down", async () => {
    const page = await (await browser.newContext(phone)).newPage();
    await page.goto(`${server.url}/sign-in`);
    const attempt = async () => {
      await page.getByLabel("Sign-in name").fill("nobody.here");
      await page.getByLabel("Passphrase").fill("not the passphrase");
      await page.getByRole("button", { name: "Sign in" }).click();
    };
    await attempt();
    await page.getByText("Name and passphrase do not fit together").waitFor();
    for (let tries = 0; tries < 6; tries += 1) {
      await attempt();
      await page.getByRole("button", { name: "Sign in" }).waitFor();
    }
    await page.getByText(/Too many tries with this name/).waitFor();
    await shoot(page, "sign-in-refused-phone");
  });

  it("a student sees their own bead and nothing of anybody else's, by address or by API", async () => {
    expect(await status("welder", `/beads/${own}`)).toBe(200);
    expect(await status("welder", `/api/beads/${own}`)).toBe(200);
    for (const address of [`/beads/${others}`, `/beads/${others}/sheet`, "/people", "/log"])
      expect(await status("welder", address), address).toBe(404);
    expect(await status("welder", `/api/photos/${sha256}/small`)).toBe(404);
    expect(await status("welder", `/api/beads/${others}`)).toBe(403);
    expect(await status("welder", `/api/beads/${others}`, "PUT")).toBe(403);
    expect(await status("welder", `/api/beads/${others}/sheet.pdf`)).toBe(403);
    await pages.welder.goto(server.url);
    expect(await pages.welder.locator(`a[href="/beads/${others}"]`).count()).toBe(0);
    expect(await pages.welder.locator(`a[href="/beads/${own}"]`).count()).toBeGreaterThan(0);
    await pages.welder.getByRole("button", { name: "More" }).click();
    expect(await pages.welder.getByRole("link", { name: "Log" }).count()).toBe(0);
    await shoot(pages.welder, "menu-student-phone");
  });

  it.each<[string, readonly Role[]]>([
    ["/people", ["owner", "instructor", "inspector"]],
    ["/log", ["owner", "inspector"]],
    ["/groups", ["owner", "instructor"]],
    ["/feedback", ["owner", "instructor"]],
    ["/jobs", ["owner", "inspector"]],
    ["/instruments", ["owner", "inspector"]],
    ["/imports", ["owner", "inspector"]],
    ["/criteria", roles],
    ["/criteria/new", ["owner", "instructor", "inspector"]],
    ["/trends", roles],
    ["/tokens", roles],
  ])("%s opens for %j only, and for whoever holds one of these besides another", async (address, allowed) => {
    for (const role of roles)
      expect(await status(role, address), `${role} at ${address}`).toBe(allowed.includes(role) ? 200 : 404);
    // The welder's account, for this while with a second role: a role counts from the next page on.
    for (const also of inDepth<readonly Role[]>(["instructor", "inspector"], roles)) {
      await db.person.update({
        where: { id: people.welder.id },
        data: { also: also === "welder" ? null : also },
      });
      expect(await status("welder", address), `welder and ${also} at ${address}`).toBe(
        allowed.includes("welder") || allowed.includes(also) ? 200 : 404,
      );
    }
    await db.person.update({ where: { id: people.welder.id }, data: { also: null } });
  });

  it("a token reaches as far as its scopes and its person, and no further", async () => {
    const token = async (userId: string, scopes: readonly Scope[]) => {
      const made = await makeToken(db, userId, { name: "test", scopes, days: 1 });
      if (!made.ok) throw new Error("no token");
      return { authorization: `Bearer ${made.value}` };
    };
    const get = async (headers: Record<string, string>, address: string, method = "GET") =>
      (await fetch(`${server.url}${address}`, { method, headers })).status;
    const reading = await token(people.welder.userId, ["beads:read"]);
    expect(await get(reading, `/api/beads/${own}`)).toBe(200);
    expect(await get(reading, `/api/beads/${others}`)).toBe(403);
    expect(await get(reading, `/api/beads/${own}`, "PUT")).toBe(403);
    const trends = await token(people.owner.userId, ["trends:read"]);
    expect(await get(trends, `/api/beads/${own}`)).toBe(403);
    expect(await get({ authorization: "Bearer toe_not-a-token" }, `/api/beads/${own}`)).toBe(401);
  });

  it("only an inspector inspects and signs, whatever request is sent in their place", async () => {
    const pen = { db, by: "test" };
    const job = await createJob(pen, { title: "Bracket run 4" });
    const inspection = job.ok && (await createInspection(pen, job.value.id));
    if (!job.ok || !inspection || !inspection.ok) throw new Error("no inspection");
    const address = `/inspections/${inspection.value.id}`;
    for (const role of ["welder", "instructor"] as const) {
      expect(await status(role, address), role).toBe(404);
      expect(await status(role, `/jobs/${job.value.id}`), role).toBe(404);
      expect(await status(role, `/api${address}/pdf?draft`), role).toBe(403);
      expect(await status(role, `/api/export/archive.zip?job=${job.value.id}`), role).not.toBe(200);
    }

    // The inspector's own requests, stopped on their way out, to be sent by others.
    const page = pages.inspector;
    await page.goto(`${server.url}/instruments`);
    await page.getByLabel("Name", { exact: true }).fill("Gauge 2");
    const addsInstrument = await stopped(page, () =>
      page.getByRole("button", { name: "Add", exact: true }).click(),
    );
    await page.goto(`${server.url}/jobs/${job.value.id}`);
    const savesJob = await stopped(page, () => page.getByRole("button", { name: "Save the job" }).click());
    await page.goto(server.url + address);
    const saves = await stopped(page, async () => {
      await page.getByLabel("Light at the surface, lx").fill("520");
      await page.getByRole("button", { name: "Save the inspection" }).click();
    });
    await page.reload();
    await page.getByLabel("What you say to the open points").fill("Seen; they stay open.");
    await page.getByLabel("Passphrase of the inspector").fill(passphrase);
    const signs = await stopped(page, () => page.getByRole("button", { name: "Sign the record" }).click());

    for (const role of ["welder", "instructor"] as const)
      for (const one of [addsInstrument, savesJob, saves, signs]) await send(role, one);
    expect(await send("owner", signs)).toContain("Only somebody with the role of inspector");
    expect(await db.instrument.count()).toBe(0);
    expect((await db.job.findUniqueOrThrow({ where: { id: job.value.id } })).revision).toBe(1);
    const untouched = await db.inspection.findUniqueOrThrow({ where: { id: inspection.value.id } });
    expect(untouched.revision).toBe(1);
    expect(await db.signedRevision.count()).toBe(0);

    // The inspector themselves: six wrong passphrases, then not even the right one for a minute.
    const second = await signedIn("second", desktop);
    const wrong = { ...signs, body: signs.body.replaceAll(passphrase, "wrong-passphrase") };
    for (let tries = 0; tries < 6; tries += 1)
      expect(await sendFrom(second, wrong)).toContain("not the passphrase of the inspector");
    expect(await sendFrom(second, signs)).toContain("Too many tries");
    expect(await db.signedRevision.count()).toBe(0);
    await second.context().close();

    // The very requests that others sent in vain.
    await send("inspector", addsInstrument);
    await send("inspector", savesJob);
    expect(await db.instrument.count()).toBe(1);
    expect((await db.job.findUniqueOrThrow({ where: { id: job.value.id } })).revision).toBe(2);
    expect(await send("inspector", signs)).toContain("Something changed since this page was opened");
    await page.goto(server.url + address);
    await page.getByLabel("What you say to the open points").fill("Seen; they stay open.");
    await page.getByLabel("Passphrase of the inspector").fill(passphrase);
    const signsAgain = await stopped(page, () =>
      page.getByRole("button", { name: "Sign the record" }).click(),
    );
    await send("inspector", signsAgain);
    const signed = await db.signedRevision.findFirstOrThrow();
    // A form filled in before it was signed, sent afterwards.
    expect(await send("inspector", saves)).toContain("This inspection is signed");
    await send("inspector", signsAgain);
    expect(await db.signedRevision.findMany()).toEqual([signed]);
    expect(signed.signedById).toBe(people.inspector.id);
    expect((await verifyRecords(db, server.dataFolder)).findings).toEqual([]);
    await page.unroute("**/*");
  });

  itDeep("the owner alone sets up the certificate that PDFs are signed with", async () => {
    const page = pages.owner;
    await page.goto(`${server.url}/keys`);
    const panel = page.locator("section", {
      has: page.getByRole("heading", { name: "Digital signature in PDFs" }),
    });
    await panel.getByText("None is set up").waitFor();
    const file = path.join(import.meta.dirname, "../fixtures/certificates/issued.p12");
    const choose = async (passphrase: string) => {
      await panel.getByLabel("Certificate with its key").setInputFiles(file);
      await panel.getByLabel("Passphrase of the file").fill(passphrase);
    };
    await panel.getByLabel("Or made here: issued to").fill("Harrow Basin Training Bay");
    const sent = await stopped(page, () => panel.getByRole("button", { name: "Make one here" }).click());
    for (const role of ["inspector", "instructor", "welder"] as const) await send(role, sent);
    expect(await paperCertificates(db)).toEqual([]);
    await page.unroute("**/*");
    await page.reload();
    await choose("eleven-copper-pots");
    await panel.getByRole("button", { name: "Use this file" }).click();
    await panel.getByText("This passphrase does not open the file").waitFor();
    await choose("eleven-copper-kettles");
    await panel.getByRole("button", { name: "Use this file" }).click();
    await panel.getByText("PDFs of signed records leave with a digital signature").waitFor();
    await panel.getByText("issued by Quarry Lane issuer").waitFor();
    await shoot(page, "keys-certificate");
    await pages.inspector.goto(`${server.url}/keys`);
    await pages.inspector.getByText("issued by Quarry Lane issuer").waitFor();
    expect(await pages.inspector.getByRole("button", { name: "Use this file" }).count()).toBe(0);
  });

  it("the owner adds a person with an account, and removes them again", async () => {
    const page = pages.owner;
    await page.goto(`${server.url}/people`);
    const add = page.locator("form", { has: page.getByRole("button", { name: "Add", exact: true }) });
    await add.getByLabel("Name").fill("Jorun Vale");
    await add.getByLabel("Identification").fill("W-21");
    await add.getByRole("button", { name: "Add", exact: true }).click();
    await page.getByText("Jorun Vale was added.").waitFor();
    const panel = page.locator("section", { has: page.getByRole("heading", { name: "Jorun Vale" }) });
    await panel.getByText("Open an account").first().click();
    await panel.getByLabel("Sign-in name").fill("jorun");
    await panel.getByRole("button", { name: "Open account" }).click();
    await panel.getByText("One-time code:").waitFor();
    await panel.getByText("can sign in").waitFor();
    await shoot(page, "people-desktop");
    await panel.getByText("Remove", { exact: true }).click();
    await panel.getByRole("button", { name: "Remove Jorun Vale" }).click();
    await page.getByRole("heading", { name: "Jorun Vale" }).waitFor({ state: "detached" });
    expect(await db.user.findUnique({ where: { username: "jorun" } })).toBeNull();
  });

  it("the log shows it all, and its verifier finds what was changed behind the program's back", async () => {
    const page = pages.inspector;
    await page.goto(`${server.url}/log`);
    await page.getByRole("button", { name: "Verify everything" }).click();
    await page.getByText(/Everything fits/).waitFor();
    await shoot(page, "log-desktop");
    await db.$executeRawUnsafe(`UPDATE "Bead" SET "title" = 'Sound' WHERE "id" = '${own}'`);
    await page.getByRole("button", { name: "Verify everything" }).click();
    await page.getByText(`bead:${own} is not as the log last recorded it`).waitFor();
    await shoot(page, "log-found-desktop");
    expect((await verifyRecords(db, server.dataFolder)).findings).toHaveLength(1);
  });
});
