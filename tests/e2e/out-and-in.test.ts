import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import Papa from "papaparse";
import { Ajv2020 } from "ajv/dist/2020";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

const root = fileURLToPath(new URL("../..", import.meta.url));
const picture = path.join(root, "demo-images/set/tee-undercut.jpg");

let server: TestServer;
let empty: TestServer;
let browser: Browser;
let beadId = "";
beforeAll(async () => {
  [server, empty, browser] = await Promise.all([startServer(), startServer(), openBrowser()]);
  const page = await (await browser.newContext(desktop)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  const bench = new Bench(page);
  await bench.newBead(server.url);
  await bench.addPhoto(picture);
  await bench.photoShown();
  beadId = page.url().split("/").at(-1) ?? "";
  await bench.drawLine(
    [
      [400, 500],
      [700, 520],
    ],
    "Undercut",
  );
  await bench.saved();
});
afterAll(async () => {
  await closeWindows(browser);
  await Promise.all([server?.stop(), empty?.stop()]);
});

const get = (from: TestServer, address: string): Promise<Response> => fetch(`${from.url}${address}`);

/** Every route file and the methods it answers, as OpenAPI writes the path. */
function routes(folder = "app/api"): { path: string; methods: string[] }[] {
  return readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const inside = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return routes(inside);
    if (entry.name !== "route.ts") return [];
    const text = readFileSync(path.join(root, inside), "utf8");
    const methods = ["GET", "POST", "PUT", "DELETE"].filter((method) =>
      new RegExp(`(?:function|export const) ${method}\\b|\\{[^}]*\\b${method}\\b[^}]*\\} = machineDoor`).test(
        text,
      ),
    );
    const at = folder.replace(/^app/, "").replace(/\[(\w+)\]/g, "{$1}");
    return [{ path: at, methods: methods.map((method) => method.toLowerCase()) }];
  });
}

describe("the HTTP API", () => {
  it("describes every route there is and no other, with schemas an independent validator takes", async () => {
    const answer = await get(server, "/api/openapi.json");
    const text = (await answer.json()) as {
      openapi: string;
      paths: Record<string, Record<string, object>>;
      components: { schemas: Record<string, object> };
    };
    expect(text.openapi).toMatch(/^3\.1\./);
    const described = Object.entries(text.paths).flatMap(([at, methods]) =>
      Object.keys(methods).map((method) => `${method} ${at}`),
    );
    const there = routes().flatMap(({ path: at, methods }) => methods.map((method) => `${method} ${at}`));
    expect(there.length).toBeGreaterThan(20);
    expect(described.sort()).toEqual(there.sort());
    // Asked before the validator compiles for seconds: the server lets go of a connection that is idle so long.
    const answers = {
      BeadList: (await (await get(server, "/api/beads")).json()) as unknown,
      CriteriaList: (await (await get(server, "/api/criteria")).json()) as unknown,
    };
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    ajv.addSchema({ $id: "toeline", components: text.components });
    for (const name of Object.keys(text.components.schemas))
      expect(() => ajv.compile({ $ref: `toeline#/components/schemas/${name}` }), name).not.toThrow();
    for (const [name, given] of Object.entries(answers)) {
      const fits = ajv.compile({ $ref: `toeline#/components/schemas/${name}` });
      expect(fits(given), `${name} ${JSON.stringify(fits.errors)}`).toBe(true);
    }
  });
});

describe("out", () => {
  it("JSON fits its published schema; CSV parses to a row a bead and a row a mark", async () => {
    const schema = (await (await get(server, "/api/export/beads.schema.json")).json()) as object;
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
    const json: unknown = await (await get(server, "/api/export/beads.json")).json();
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true);
    const rows = async (address: string) =>
      Papa.parse<Record<string, string>>(await (await get(server, address)).text(), {
        header: true,
        skipEmptyLines: true,
      });
    const beads = await rows("/api/export/beads.csv");
    expect(beads.errors).toEqual([]);
    expect(beads.data).toHaveLength(1);
    const marks = await rows("/api/export/marks.csv");
    expect(marks.errors).toEqual([]);
    expect(marks.data).toHaveLength(1);
  });

  it("marks are W3C Web Annotations whose selectors a browser reads as SVG", async () => {
    const text = await (await get(server, `/api/beads/${beadId}/annotations.json`)).text();
    const selectors = [...text.matchAll(/"value":"(<svg.*?<\/svg>)"/g)].map(
      ([, svg = ""]) => JSON.parse(`"${svg}"`) as string,
    );
    expect(text).toContain("http://www.w3.org/ns/anno.jsonld");
    expect(selectors).toHaveLength(1);
    const page = await (await browser.newContext(desktop)).newPage();
    for (const svg of selectors) {
      const root = await page.evaluate((source) => {
        const parsed = new DOMParser().parseFromString(source, "image/svg+xml");
        return {
          name: parsed.documentElement.nodeName,
          errors: parsed.querySelectorAll("parsererror").length,
        };
      }, svg);
      expect(root).toEqual({ name: "svg", errors: 0 });
    }
  });
});

describe("out, into an empty installation, and out again", () => {
  it("gives the same bytes", async () => {
    const first = Buffer.from(await (await get(server, "/api/export/archive.zip")).arrayBuffer());
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await page.goto(`${empty.url}/imports`);
    await page
      .locator('input[type="file"]')
      .setInputFiles({ name: "archive.zip", mimeType: "application/zip", buffer: first });
    await page.getByRole("button", { name: /^Import/ }).click();
    await page
      .getByRole("link", { name: /Undercut|Bead 1/ })
      .or(page.getByText(/imported/i))
      .first()
      .waitFor();
    await shoot(page, "imported-desktop");
    const again = Buffer.from(await (await get(empty, "/api/export/archive.zip")).arrayBuffer());
    expect(again.equals(first)).toBe(true);
  });

  it("a damaged archive is refused in a sentence, and nothing is kept", async () => {
    const bytes = Buffer.from(await (await get(server, "/api/export/archive.zip")).arrayBuffer());
    bytes[bytes.length >> 1]! ^= 1;
    const answer = await fetch(`${empty.url}/api/import`, { method: "POST", body: bytes });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    const { issues } = (await answer.json()) as { issues: { message: string }[] };
    expect(issues[0]?.message).toMatch(/\.$/);
    const { length } = ((await (await get(empty, "/api/beads")).json()) as { beads: unknown[] }).beads;
    expect(length).toBe(1);
  });
});

describe("the list and the trends", () => {
  it("filter by what is recorded, and each bar leads to its beads, on a phone without sideways scrolling", async () => {
    const page = await (await browser.newContext(phone)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await page.goto(server.url);
    await page.getByText("Filter and sort").click();
    await shoot(page, "filter-phone");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.goto(`${server.url}/trends`);
    await shoot(page, "trends-phone");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.getByRole("link", { name: "Undercut" }).first().click();
    await page.waitForURL(/imperfection=undercut/);
    await page.locator(`a[href="/beads/${beadId}"]`).first().waitFor();
  });
});
