import { createReadStream } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeToken, openAccount } from "@/lib/account";
import { openDb, type Db } from "@/lib/db";
import { roles, type Role, type Scope } from "@/lib/people";
import { receivePhoto } from "@/lib/photo";
import { addPerson, addPhoto, createBead, setAccount, verifyRecords } from "@/lib/record";
import { desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";

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
  const account = await openAccount(db, { signInName, passphrase });
  if (!made.ok || !account.ok) throw new Error("no person");
  await setAccount(pen, made.value.id, account.value);
  return { id: made.value.id, userId: account.value };
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

async function signedIn(name: string, window: typeof desktop | typeof phone): Promise<Page> {
  const page = await (await browser.newContext(window)).newPage();
  page.setDefaultTimeout(20_000);
  await page.goto(server.url);
  await page.waitForURL(/\/sign-in$/);
  await page.getByLabel("Sign-in name").fill(name);
  await page.getByLabel("Passphrase").fill(passphrase);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL(`${server.url}/`);
  return page;
}

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(undefined, { accounts: true }), openBrowser()]);
  process.env["TOELINE_DATA"] = server.dataFolder;
  db = openDb(`file:${path.join(server.dataFolder, "toeline.db")}`);
  for (const role of roles) people[role] = await person(role, role);
  people.other = await person("other", "welder");
  own = await bead(people.welder.id);
  others = await bead(people.other.id);
  for (const role of roles) pages[role] = await signedIn(role, role === "welder" ? phone : desktop);
}, 120_000);
afterAll(async () => {
  await browser?.close();
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

  it("a wrong passphrase is refused in a sentence, and guessing is slowed down", async () => {
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
    await pages.welder.getByRole("button", { name: "Menu" }).click();
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
  ])("%s opens for %j only", async (address, allowed) => {
    for (const role of roles)
      expect(await status(role, address), `${role} at ${address}`).toBe(allowed.includes(role) ? 200 : 404);
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
    await panel.getByLabel("Passphrase").fill("short");
    await panel.getByRole("button", { name: "Open account" }).click();
    await panel.getByText("at least 10 characters.").last().waitFor();
    await panel.getByLabel("Passphrase").fill("long enough now");
    await panel.getByRole("button", { name: "Open account" }).click();
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
    await db.$executeRawUnsafe(`UPDATE Bead SET title = 'Sound' WHERE id = '${own}'`);
    await page.getByRole("button", { name: "Verify everything" }).click();
    await page.getByText(`bead:${own} is not as the log last recorded it`).waitFor();
    await shoot(page, "log-found-desktop");
    expect((await verifyRecords(db, server.dataFolder)).findings).toHaveLength(1);
  });
});
