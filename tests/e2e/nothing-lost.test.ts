import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { openDb } from "@/lib/db";
import { verifyRecords } from "@/lib/verify";
import { itDeep } from "../setup/in-depth";
import { PATIENT_MS } from "../setup/patience";
import { Bench } from "./support/bench";
import { closeWindows, desktop as plain, kept, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";

const root = fileURLToPath(new URL("../..", import.meta.url));
const jpeg = path.join(root, "demo-images/set/tee-undercut.jpg");
const otherJpeg = path.join(root, "demo-images/set/lap-cold-lap.jpg");

const desktop = kept(plain);

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
beforeEach(() => server.revive());
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

interface StoredBead {
  readonly id: string;
  readonly photos: readonly { readonly sha256: string }[];
  readonly content: {
    readonly setup: { readonly volts: number | null };
    readonly photos: readonly { readonly drawing: { readonly marks: readonly object[] } }[];
  };
}
/** What the server holds, past every screen. */
async function stored(): Promise<readonly StoredBead[]> {
  const answer = await fetch(`${server.url}/api/beads?limit=500`);
  return ((await answer.json()) as { beads: StoredBead[] }).beads;
}
const beadOf = async (id: string) => (await stored()).find((bead) => bead.id === id);
const marksOf = async (id: string) =>
  (await beadOf(id))?.content.photos.map(({ drawing }) => drawing.marks.length);
const picturesOf = async (id: string) =>
  ((await beadOf(id))?.photos ?? []).map(({ sha256 }) => `/api/photos/${sha256}/view`);

const idOf = ({ page }: Bench): string => page.url().split("/").at(-1) ?? "";
const noteOf = ({ page }: Bench) => page.getByTestId("save-state");
async function saveState({ page }: Bench, state: string) {
  await page.waitForSelector(`[data-testid="save-state"][data-state="${state}"]`, { timeout: PATIENT_MS });
}
async function point(bench: Bench, x: number, y: number) {
  await bench.tool("Point");
  await bench.click(x, y);
  await bench.pick("Undercut");
}
/** The device has what it needs without network: the worker runs, and these pages and pictures are kept. */
async function untilKept(context: BrowserContext, bench: Bench, paths: readonly string[]) {
  await expect
    .poll(
      () =>
        bench.page.evaluate(async (wanted) => {
          const kept = await Promise.all(wanted.map((one) => caches.match(one)));
          return Boolean(navigator.serviceWorker.controller) && kept.every((one) => one !== undefined);
        }, paths),
      { timeout: PATIENT_MS },
    )
    .toBe(true);
  expect(context.serviceWorkers().length).toBe(1);
}

describe("the server goes and comes back while somebody marks", () => {
  it("everything is there without a press, reloads and an answer that got lost included", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await point(bench, 500, 400);
    await bench.saved();
    const id = idOf(bench);
    await page.reload();
    await bench.photoShown();
    await untilKept(page.context(), bench, [`/beads/${id}`, "/beads/new"]);
    expect(await marksOf(id)).toEqual([1]);

    await server.kill();
    await point(bench, 600, 420);
    await saveState(bench, "waiting");
    expect((await noteOf(bench).innerText()).trim()).toBe("Kept on this device, 1 to send");
    await page.getByRole("link", { name: "Sheet" }).click();
    await page.getByText("The sheet waits for your last changes").waitFor();
    await shoot(page, "sheet-waits");
    // Nobody answers: page, script and picture come from this device, the marks as well.
    await page.reload();
    await bench.photoHere();
    await bench.expectMarks(2);
    await point(bench, 700, 430);
    await saveState(bench, "waiting");
    await page.reload();
    await bench.photoHere();
    await bench.expectMarks(3);

    await server.revive();
    await expect.poll(() => marksOf(id), { timeout: PATIENT_MS }).toEqual([3]);
    await bench.saved();
    await page.getByRole("link", { name: "Sheet" }).click();
    await page.waitForURL(/\/sheet$/);
    await page.context().close();
  });

  itDeep("a killed window's work is sent from the list, and found there until it is", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await bench.saved();
    const id = idOf(bench);
    await untilKept(page.context(), bench, ["/", "/beads/new"]);
    await page.context().setOffline(true);
    await point(bench, 500, 400);
    await saveState(bench, "waiting");
    const list = await page.context().newPage();
    await page.close();
    await list.goto(server.url);
    await list.getByText("Kept on this device").waitFor();
    await list.getByText("(1 to send)").waitFor();
    await list.context().setOffline(false);
    await expect.poll(() => marksOf(id), { timeout: PATIENT_MS }).toEqual([1]);
    await list.getByText("(1 to send)").waitFor({ state: "detached" });
    await list.context().close();
  });

  itDeep(
    "work on a bead that was deleted meanwhile says so on the list, and goes when somebody says so twice",
    async () => {
      const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
      const { page } = bench;
      await bench.saved();
      const id = idOf(bench);
      await untilKept(page.context(), bench, ["/", "/beads/new"]);
      await page.context().setOffline(true);
      await point(bench, 500, 400);
      await saveState(bench, "waiting");
      const list = await page.context().newPage();
      await page.close();
      const other = await (await browser.newContext(desktop)).newPage();
      await other.goto(`${server.url}/beads/${id}/delete`);
      await other.getByRole("button", { name: "Delete this bead" }).click();
      await other.getByRole("heading", { name: "Deleted beads" }).waitFor();
      await list.goto(server.url);
      await list.context().setOffline(false);
      await list.getByText("it was deleted").waitFor();
      await shoot(list, "left-stuck");
      await list.getByRole("button", { name: "Throw it away" }).click();
      await list.getByText("cannot be brought back").waitFor();
      await list.getByRole("button", { name: "Throw it away" }).click();
      await list.getByText("Kept on this device").waitFor({ state: "detached" });
      await list.reload();
      await list.getByRole("heading", { name: "Beads", exact: true }).waitFor();
      expect(await list.getByText("Kept on this device").count()).toBe(0);
      await list.context().close();
      await other.context().close();
    },
  );

  itDeep("two windows that were away collide, and both versions are shown", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await bench.saved();
    const id = idOf(bench);
    const other = new Bench(await (await browser.newContext(desktop)).newPage());
    await other.page.goto(page.url());
    await other.photoShown();
    await page.context().setOffline(true);
    await point(bench, 500, 400);
    await saveState(bench, "waiting");
    await point(other, 700, 430);
    await other.saved();
    await bench.expectMarks(1);
    await page.context().setOffline(false);
    await page.getByRole("button", { name: /Keep both/ }).click();
    await bench.expectMarks(2);
    await bench.saved();
    expect(await marksOf(id)).toEqual([2]);
    await page.context().close();
    await other.page.context().close();
  });
});

describe("the first page that a device ever opens", () => {
  itDeep("is there without network with its photo, which was loaded before any worker ran", async () => {
    const maker = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    await point(maker, 500, 400);
    await maker.saved();
    const [id, address] = [idOf(maker), maker.page.url()];
    await maker.page.context().close();
    const bench = new Bench(await (await browser.newContext(desktop)).newPage());
    await bench.page.goto(address);
    await bench.photoShown();
    await untilKept(bench.page.context(), bench, [`/beads/${id}`, ...(await picturesOf(id))]);
    await server.kill();
    await bench.page.reload();
    await bench.photoHere();
    await bench.expectMarks(1);
    await bench.page.context().close();
  });
});

describe("a page that was on its way while the first worker began", () => {
  itDeep("is kept by it with its photo, though it was asked for past it", async () => {
    const maker = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    await maker.saved();
    const [id, address] = [idOf(maker), maker.page.url()];
    await maker.page.context().close();

    const bench = new Bench(await (await browser.newContext(desktop)).newPage());
    const { page } = bench;
    await page.addInitScript(() => {
      const { serviceWorker } = navigator;
      const register = serviceWorker.register.bind(serviceWorker);
      const begun = new Promise<void>((begin) => Object.assign(window, { begin }));
      serviceWorker.register = (...how) => begun.then(() => register(...how));
    });
    await page.goto(address);
    await bench.photoShown();
    let letGo = (): void => undefined;
    const held = new Promise<void>((go) => (letGo = go));
    await page.route(address, async (route) => {
      await held;
      await route.continue();
    });
    // The page that stands still lets the worker begin, when the next one is on its way already.
    const began = page.context().waitForEvent("serviceworker", { timeout: PATIENT_MS });
    await page.evaluate(() => {
      const { begin } = window as unknown as { begin: () => void };
      addEventListener("beforeunload", () => setTimeout(begin, 500));
    });
    const reloaded = page.reload({ timeout: PATIENT_MS });
    const worker = await began;
    await expect
      .poll(() =>
        worker.evaluate(
          () => (self as never as { registration: ServiceWorkerRegistration }).registration.active?.state,
        ),
      )
      .toBe("activated");
    letGo();
    await reloaded;
    await page.unroute(address);
    await bench.photoShown();
    await untilKept(page.context(), bench, [`/beads/${id}`, ...(await picturesOf(id))]);
    await page.context().close();
  });
});

describe("photos taken while away", () => {
  itDeep("are marked at once, sent by themselves and not twice", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await bench.saved();
    const id = idOf(bench);
    await untilKept(page.context(), bench, ["/beads/new", ...(await picturesOf(id))]);
    await server.kill();
    await bench.addPhoto(otherJpeg);
    await page.getByText("kept on this device, goes out by itself").waitFor();
    await saveState(bench, "waiting");
    expect((await noteOf(bench).innerText()).trim()).toBe("Kept on this device, 2 to send");
    await shoot(page, "photo-waits");
    await bench.photoHere();
    await point(bench, 500, 400);
    await page.reload();
    await bench.photoHere();
    await page.getByRole("list", { name: "Photos on their way" }).waitFor();
    await server.revive();
    await expect.poll(() => marksOf(id), { timeout: PATIENT_MS }).toEqual([0, 1]);
    await bench.photoShown();
    await bench.saved();
    expect((await beadOf(id))?.photos.length).toBe(2);
    await page.context().close();
  });
});

describe("a new bead", () => {
  itDeep("leaves no record until its first value, and begins without network", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    const before = (await stored()).length;
    await bench.newBead(server.url);
    await page.waitForTimeout(1500);
    expect((await stored()).length).toBe(before);
    expect(new URL(page.url()).pathname).toBe("/beads/new");
    await untilKept(page.context(), bench, ["/beads/new"]);

    await server.kill();
    await page.reload();
    await bench.section("Set-up");
    await bench.exampleSetup(/T-joint horizontal, 230 V/);
    await saveState(bench, "waiting");
    await bench.addPhoto(jpeg);
    await bench.photoHere();
    await page.reload();
    await bench.photoHere();
    await point(bench, 500, 400);
    await saveState(bench, "waiting");
    const id = new URL(page.url()).hash.slice(1);
    await server.revive();
    await page.waitForURL(`${server.url}/beads/${id}`);
    await bench.photoShown();
    await bench.saved();
    const made = await beadOf(id);
    expect((await stored()).length).toBe(before + 1);
    expect(made?.content.setup.volts).not.toBeNull();
    expect(await marksOf(id)).toEqual([1]);
    expect(await page.getByLabel("Title").inputValue()).toMatch(/^Bead \d+$/);
    await page.context().close();
  });

  itDeep("opens by itself what could not be opened, once the server answers again", async () => {
    const elsewhere = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const known = idOf(elsewhere);
    await elsewhere.page.context().close();
    const context = await browser.newContext(desktop);
    const [page, other] = [await context.newPage(), await context.newPage()];
    page.setDefaultTimeout(PATIENT_MS);
    other.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await bench.newBead(server.url);
    await untilKept(context, bench, ["/beads/new"]);
    await server.kill();
    await page.goto(`${server.url}/trends`);
    await page.getByRole("heading", { name: "This page needs Toeline" }).waitFor();
    await other.goto(`${server.url}/beads/${known}`);
    await other.getByRole("heading", { name: "This bead is not on this device" }).waitFor();
    await server.revive();
    await page.getByRole("heading", { name: "Trends", exact: true }).waitFor();
    await other.getByLabel("Title").waitFor();
    await context.close();
  });

  itDeep("says what does not work without network, and shows nothing of anybody there", async () => {
    const context = await browser.newContext(desktop);
    const page = await context.newPage();
    page.setDefaultTimeout(PATIENT_MS);
    const bench = new Bench(page);
    await bench.newBead(server.url);
    await untilKept(context, bench, ["/beads/new"]);
    await server.kill();
    await page.goto(`${server.url}/trends`);
    await page.getByText("signing a record, sheets and PDFs").waitFor();
    await shoot(page, "without-network");
    await page.goto(`${server.url}/beads/bcdfghjkmnpq`);
    await page.getByRole("heading", { name: "This bead is not on this device" }).waitFor();
    await server.revive();
    await context.close();
  });
});

describe("on the bench", () => {
  itDeep(
    "a set-up that was overwritten comes back with a press, and a deleted bead with another",
    async () => {
      const bench = await Bench.onPhoto(browser, server.url, otherJpeg, desktop);
      const { page } = bench;
      await bench.section("Set-up");
      await bench.exampleSetup(/[Gg]roove/);
      await bench.saved();
      const id = idOf(bench);
      const setup = async () => JSON.stringify((await beadOf(id))?.content.setup);
      const planned = await setup();
      await page.getByRole("button", { name: "Same as the last bead" }).click();
      await bench.saved();
      expect(await setup()).not.toBe(planned);
      await page.getByRole("button", { name: "Undo the last change of the set-up" }).click();
      await bench.saved();
      expect(await setup()).toBe(planned);

      await page.getByRole("link", { name: "Delete this bead" }).click();
      await page.getByRole("button", { name: "Delete this bead" }).click();
      await page.getByRole("heading", { name: "Deleted beads" }).waitFor();
      expect((await stored()).some((bead) => bead.id === id)).toBe(false);
      await shoot(page, "deleted-beads");
      // Of several the one that was deleted last comes first.
      await page.getByRole("button", { name: "Bring it back" }).first().click();
      await page.waitForURL(`${server.url}/beads/${id}`);
      await bench.photoShown();
      expect(await setup()).toBe(planned);
      const db = openDb(server.database, server.dataFolder);
      expect((await verifyRecords(db, server.dataFolder)).findings).toEqual([]);
      await db.$disconnect();
      await page.context().close();
    },
  );
});
