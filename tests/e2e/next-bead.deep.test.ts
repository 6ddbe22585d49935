import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";

const jpeg = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set/tee-undercut.jpg");

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

describe("from a bead to the next one", () => {
  it("carries the change over, and what cured it weighs on the causes of this shop", async () => {
    const bench = await Bench.onPhoto(browser, server.url, jpeg, desktop);
    const { page } = bench;
    await bench.drawLine(
      [
        [400, 500],
        [600, 510],
      ],
      "Undercut",
    );
    await bench.section("Set-up");
    await bench.exampleSetup(/T-joint horizontal, 230 V/);
    await bench.section("Causes");
    await bench.untilChange();
    const change = await page.getByTestId("first-change").locator("p").first().innerText();
    await bench.saved();
    const first = page.url();
    await page.getByRole("button", { name: /Run it again/ }).click();
    await page.waitForURL((url) => url.href !== first && /\/beads\//.test(url.href));
    expect(await page.getByLabel("Title").inputValue()).toMatch(/, try 2$/);
    await bench.section("Causes");
    await page.getByText(change).first().waitFor();
    await page.getByRole("button", { name: "Cured" }).click();
    await bench.saved();
    await shoot(page, "next-bead");

    await page.getByRole("link", { name: /Side by side with bead 1/ }).click();
    await page.waitForURL(/\/compare$/);
    const gone = page.locator("section", { has: page.getByRole("heading", { name: "No longer marked" }) });
    await gone.getByRole("row", { name: /Undercut/ }).waitFor();
    await shoot(page, "side-by-side-desktop");
    const said = (word: string) => page.getByRole("button", { name: word, exact: true });
    await said("Better").click();
    await page.getByText("Recorded: better.").waitFor();
    await said("Cured").click();
    await page.getByText("Recorded: cured.").waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    const card = await page.request.get(first.replace("/beads/", "/api/beads/") + "/card.pdf");
    expect([card.status(), card.headers()["content-type"]]).toEqual([200, "application/pdf"]);
    await page.goto(`${first}/card`);
    await page.getByRole("heading", { level: 1, name: change.split(".")[0] ?? change }).waitFor();
    await shoot(page, "bench-card-phone");
    await page.setViewportSize({ width: 1440, height: 900 });

    await page.goto(first);
    await bench.section("Causes");
    await page.getByText("One cure confirmed here").waitFor();
    await page
      .getByText(/1 of 1 confirmed here/)
      .first()
      .waitFor({ state: "attached" });
    await page.getByRole("button", { name: "Start counting afresh" }).click();
    await page.getByText("One cure confirmed here").waitFor({ state: "detached" });
    await page.context().close();
  });
});

describe("the doors for machines over HTTP", () => {
  it("give their schema, answer a case, and say where a case is wrong", async () => {
    for (const door of ["diagnose", "judge", "measure"]) {
      const schema = (await (await fetch(`${server.url}/api/${door}`)).json()) as { type?: string };
      expect(schema.type, door).toBe("object");
    }
    const send = (door: string, body: unknown) =>
      fetch(`${server.url}/api/${door}`, {
        method: "POST",
        body: typeof body === "string" ? body : JSON.stringify(body),
      });
    const sick = {
      setup: { process: "FCAW-S", electrodeClass: "E71T-11", polarity: "DCEP" },
      findings: [{ imperfection: "spatter" }],
    };
    const diagnosis = (await (await send("diagnose", sick)).json()) as { causes: { id: string }[] };
    expect(diagnosis.causes[0]?.id).toBe("polarity");
    const wrong = await send("diagnose", { findings: [{ imperfection: "sadness" }] });
    expect(wrong.status).toBe(422);
    expect(JSON.stringify(await wrong.json())).toContain("findings.0.imperfection");
    expect((await send("judge", "{not json")).status).toBe(400);
  });
});
