import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import axeCore from "axe-core";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openDb, type Db } from "@/lib/db";
import { fillDemoShop } from "@/lib/demo/fill-shop";
import { BEADS_A_ROUND, eyeLooks } from "@/lib/eye";
import { roles, type Role } from "@/lib/people";
import { addPerson } from "@/lib/roster";
import { openAccountOf } from "../setup/account";
import { inDepth } from "../setup/in-depth";
import { closeWindows, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { signIn } from "./support/sign-in";

const passphrase = "slag-then-bead";
const touch = { hasTouch: true, isMobile: true } as const;
/** The smallest window that is promised, a phone laid down, a desk with the letters twice as large, a phone in a person's own colours. */
const windows: readonly (BrowserContextOptions & {
  name: string;
  letters?: number;
  /** Who walks it; the owner's menu holds every page, and the deep run takes all roles. */
  walks: readonly Role[];
})[] = [
  { name: "small phone", viewport: { width: 360, height: 640 }, ...touch, walks: ["owner"] },
  { name: "phone laid down", viewport: { width: 844, height: 390 }, ...touch, walks: ["welder"] },
  {
    name: "letters twice as large",
    viewport: { width: 1280, height: 800 },
    letters: 2,
    walks: ["inspector"],
  },
  {
    name: "colours of a person's own",
    viewport: { width: 390, height: 844 },
    ...touch,
    forcedColors: "active",
    walks: ["instructor"],
  },
];

let server: TestServer;
let browser: Browser;
let db: Db;
let own = "";
const errors: string[] = [];

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(undefined, { accounts: true }), openBrowser()]);
  process.env["TOELINE_DATA"] = server.dataFolder;
  db = openDb(server.database, server.dataFolder);
  await fillDemoShop({ db, by: "system" }, server.dataFolder);
  layDrawnBeads(path.join(server.dataFolder, "eye"));
  const pen = { db, by: "test" };
  for (const role of roles) {
    const made = await addPerson(pen, { name: `The ${role}`, mark: null, role });
    if (!made.ok) throw new Error("no person");
    await openAccountOf(pen, made.value.id, role, passphrase);
    // One bead that says everything is the welder's own.
    const marked = await db.beadFacts.findFirstOrThrow({ where: { marks: { gt: 1 }, verdict: "reject" } });
    own = marked.beadId;
    if (role === "welder") await db.bead.update({ where: { id: own }, data: { welderId: made.value.id } });
  }
});
afterAll(async () => {
  await closeWindows(browser);
  await db?.$disconnect();
  await server?.stop();
});

/** Beads for two rounds by their names, which is all that is read here: else the first visit has some drawn for seconds. */
function layDrawnBeads(folder: string): void {
  mkdirSync(folder);
  for (const look of eyeLooks)
    for (let i = 0; i < 2 * BEADS_A_ROUND; i += 1)
      writeFileSync(path.join(folder, `${look}-${i}.json`), "{}");
}

const signedIn = async (role: Role, device: BrowserContextOptions): Promise<Page> => {
  const page = await signIn(browser, server.url, { name: role, passphrase }, { ...device, bypassCSP: true });
  page.on("pageerror", (error) => errors.push(error.message));
  return page;
};

/** Every address that this role's menu leads to, in sight and under "More". */
async function menuOf(page: Page): Promise<readonly string[]> {
  await page.getByRole("button", { name: "More" }).first().click();
  const hrefs = () =>
    page
      .locator('nav[aria-label="Toeline"] a, nav[aria-label="More of Toeline"] a')
      .evaluateAll((links) => links.map((link) => link.getAttribute("href") ?? ""));
  await page.getByRole("navigation", { name: "More of Toeline" }).waitFor();
  return [...new Set(await hrefs())];
}

/** Pages that stand behind a bead, and the first that each list leads to. */
async function behind(page: Page, lists: readonly string[]): Promise<readonly string[]> {
  const found: string[] = [];
  for (const list of lists) {
    await page.goto(`${server.url}${list}`);
    // What the server sent is all there when the page has loaded: a list without a row leads nowhere.
    const [first] = await page.locator(`main a[href^="${list}/"]`).all();
    const href = await first?.getAttribute("href");
    if (href) found.push(href);
  }
  return found;
}

/** What sticks out at the sides, and what is to be pressed and lies out of reach or under the bar. */
const misfits = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    const name = (one: Element) =>
      `${one.tagName.toLowerCase()} "${(one.textContent || one.getAttribute("aria-label") || "").trim().slice(0, 40)}"`;
    // What scrolls inside its own frame is reached there.
    const inFrame = (one: Element) => {
      for (let up = one.parentElement; up; up = up.parentElement)
        if (/auto|scroll|hidden|clip/.test(getComputedStyle(up).overflowX)) return true;
      return false;
    };
    const seen = (one: Element) =>
      one.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
      !one.closest(".visually-hidden, [inert]") &&
      getComputedStyle(one).clipPath === "none";
    const out = [...document.querySelectorAll("main *, header *, nav *")]
      .filter((one) => seen(one) && !inFrame(one))
      .filter((one) => {
        const { left, right, width } = one.getBoundingClientRect();
        return width > 0 && (right > wide + 1 || left < -1);
      })
      .map((one) => `sticks out: ${name(one)}`);
    const sideways = document.documentElement.scrollWidth > wide ? ["scrolls sideways"] : [];
    // Whatever is to be pressed can be brought to where nothing lies over it.
    const pressed = [
      ...document.querySelectorAll<HTMLElement>(
        "main a, main button, main input, main select, main textarea, main summary",
      ),
    ].filter((one) => seen(one) && one.getBoundingClientRect().width > 0 && !one.matches(":disabled"));
    const covered = pressed
      .filter((one) => {
        one.scrollIntoView({ block: "center", inline: "center" });
        const { left, top, width, height } = one.getBoundingClientRect();
        const at = document.elementFromPoint(left + width / 2, top + height / 2);
        return at === null || !(one.contains(at) || at.contains(one) || at.closest("label")?.contains(one));
      })
      .map((one) => `out of reach: ${name(one)}`);
    window.scrollTo(0, 0);
    return [...sideways, ...out.slice(0, 3), ...covered.slice(0, 3)];
  });

/** A word said twice, one of many, and what only machines call so. */
const clumsy = (text: string): readonly string[] =>
  [
    /\b([A-Za-z]{2,}) \1\b/g,
    /(?<![\d.,/] ?)\b1 (?:bead|weld|mark|photo|job|student|exercise|instrument|person|set-up)s\b/g,
    /carbon-steel|\b(?:120V|230V|400V-3ph)\b/g,
  ].flatMap((told) => [...text.matchAll(told)].map(([words]) => `says "${words}"`));

/** What is serious; and `also`, a rule by its name, whatever it weighs. */
const axe = (page: Page, also = ""): Promise<readonly string[]> =>
  page.evaluate(
    async ([source, also]) => {
      if (!("axe" in window)) (0, eval)(source);
      const { violations } = await (
        window as unknown as {
          axe: {
            run: (
              of: Document,
              options: object,
            ) => Promise<{
              violations: readonly { impact: string; id: string; nodes: readonly { target: unknown }[] }[];
            }>;
          };
        }
      ).axe.run(document, { resultTypes: ["violations"] });
      return violations
        .filter(({ impact, id }) => impact === "serious" || impact === "critical" || id === also)
        .map(
          ({ id, nodes }) =>
            `${id}: ${nodes
              .slice(0, 2)
              .map(({ target }) => String(target))
              .join(", ")}`,
        );
    },
    [axeCore.source, also] as const,
  );

/** The sizes of type are tokens, so that is what somebody's larger letters change. */
async function enlarge(page: Page, by: number | undefined): Promise<void> {
  if (by === undefined) return;
  await page.evaluate((times) => {
    const root = document.documentElement;
    for (let i = 1; i <= 8; i += 1) {
      const now = parseFloat(getComputedStyle(root).getPropertyValue(`--type-${i}`));
      root.style.setProperty(`--type-${i}`, `${now * times}px`);
    }
  }, by);
}

const beadPages = (): readonly string[] => ["", "/sheet", "/card"].map((part) => `/beads/${own}${part}`);
const lists: Readonly<Record<Role, readonly string[]>> = {
  owner: ["/groups", "/exercises", "/students", "/jobs"],
  instructor: ["/feedback"],
  inspector: ["/criteria"],
  welder: ["/atlas"],
};

// The ordinary run walks the smallest window, where least fits.
describe.each(inDepth(windows.slice(0, 1), windows))("$name", ({ name, letters, walks, ...device }) => {
  it.each(inDepth(walks, roles))(
    "every page of the menu of the %s fits, and all that is to be pressed is within reach",
    async (role) => {
      const page = await signedIn(role, device);
      const menu = await menuOf(page);
      expect(menu.length).toBeGreaterThan(6);
      const addresses = new Set([...menu, ...beadPages(), ...(await behind(page, lists[role]))]);
      const found: string[] = [];
      // The ordinary run takes every third page, the first behind a bead among them.
      const tried = [...addresses].filter((one, i) => i % inDepth(3, 1) === 0 || one === beadPages()[0]);
      for (const address of tried) {
        const answer = await page.goto(`${server.url}${address}`);
        if (answer?.status() !== 200) found.push(`${address}: ${answer?.status()}`);
        await enlarge(page, letters);
        if (address === beadPages()[0]) await shoot(page, `fits-${name.replaceAll(/\W+/g, "-")}-${role}`);
        const said = clumsy(await page.locator("body").innerText());
        found.push(...[...(await misfits(page)), ...said].map((what) => `${address}: ${what}`));
      }
      expect(found).toEqual([]);
      await page.context().close();
    },
  );
});

it("what is said twice, of one as of many, or in machines' words is found", () => {
  expect(clumsy("WPS WPS HB-11; 1 welds; carbon-steel at 230V")).toHaveLength(4);
  expect(clumsy("WPS HB-11; 11 welds, 1 weld; 2.1 beads; carbon steel at 230 V")).toEqual([]);
});

it.each(inDepth(["beads"], ["exercises", "jobs", "beads"]))(
  "of %s, one that is missing is not said to be a deleted bead",
  async (list) => {
    const page = await signedIn("owner", { viewport: { width: 390, height: 844 } });
    expect((await page.goto(`${server.url}/${list}/nowhere`))?.status()).toBe(404);
    expect(await page.locator("main").innerText()).toMatch(
      /What stood here was deleted, or the address is wrong/,
    );
    await page.context().close();
  },
);

describe.each(inDepth(["dark"] as const, ["light", "dark"] as const))("the %s look", (look) => {
  it("has nothing serious that axe finds, on the main pages", async () => {
    const page = await signedIn("owner", { viewport: { width: 1440, height: 900 }, colorScheme: look });
    expect(await page.evaluate(() => document.documentElement.dataset["look"])).toBe(look);
    const hand = await db.exercise.findFirstOrThrow();
    const found: string[] = [];
    const addresses = ["/", ...beadPages(), `/hand-in/${hand.code}`, "/plan", "/atlas"];
    for (const address of [
      ...addresses,
      ...inDepth([], ["/people", "/students", "/groups", "/log", "/exports"]),
    ]) {
      await page.goto(`${server.url}${address}`);
      // A page that is read out is walked by its headings.
      const also = address.startsWith("/hand-in") ? "heading-order" : "";
      found.push(...(await axe(page, also)).map((what) => `${address}: ${what}`));
    }
    expect(found).toEqual([]);
    await page.context().close();
  });
});

describe("light or dark", () => {
  it("is chosen on the device, stands before the first painting, and holds where nothing is", async () => {
    const page = await signedIn("welder", { viewport: { width: 390, height: 844 }, colorScheme: "light" });
    const look = () => page.evaluate(() => document.documentElement.dataset["look"]);
    await page.getByRole("button", { name: "More" }).first().click();
    await page.getByRole("button", { name: "Dark" }).click();
    expect(await look()).toBe("dark");
    await shoot(page, "look-dark-phone");
    // What stands when the page's own text has come and no script of it has run.
    await page.addInitScript(() => {
      new MutationObserver((_, watch) => {
        if (!document.body) return;
        watch.disconnect();
        (window as unknown as { firstLook?: string | undefined }).firstLook =
          document.documentElement.dataset["look"];
      }).observe(document, { childList: true, subtree: true });
    });
    await page.reload();
    expect(await page.evaluate(() => (window as unknown as { firstLook?: string }).firstLook)).toBe("dark");
    await page.goto(`${server.url}/nowhere`);
    await page.getByText("Nothing here").waitFor();
    expect(await look()).toBe("dark");
    await page.goto(server.url);
    await page.getByRole("button", { name: "More" }).first().click();
    await page.getByRole("button", { name: "As the device" }).click();
    expect(await look()).toBe("light");
    await page.emulateMedia({ colorScheme: "dark" });
    await page.waitForFunction(() => document.documentElement.dataset["look"] === "dark");
    // Paper is light whatever the screen is.
    await page.emulateMedia({ colorScheme: "dark", media: "print" });
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
      "rgb(255, 255, 255)",
    );
    await page.context().close();
    expect(errors).toEqual([]);
  });
});
