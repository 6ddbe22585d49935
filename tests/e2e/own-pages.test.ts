import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { once } from "node:events";
import type { AddressInfo } from "node:net";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Bench } from "./support/bench";
import { closeWindows, desktop, kept, openBrowser } from "./support/browser";
import { sharedServer, type SharedServer } from "./support/server";
import { windows } from "./support/windows";
import { PATIENT_MS } from "../setup/patience";

const picture = path.join(
  fileURLToPath(new URL("../..", import.meta.url)),
  "demo-images/set/lap-cold-lap.jpg",
);

let server: SharedServer;
let browser: Browser;
let stranger: Server;
/** A page of another site on this machine, as a stranger would write it. */
let strangerUrl = "";
beforeAll(async () => {
  [server, browser] = await Promise.all([sharedServer(), openBrowser()]);
  stranger = createServer((request, response) => {
    response.setHeader("content-type", "text/html");
    response.end(
      request.url === "/frame"
        ? `<iframe id="f" src="${server.url}/" width="800" height="600"></iframe>`
        : `<form method="post" action="${server.url}/" enctype="multipart/form-data"><button>Go</button></form>`,
    );
  });
  stranger.listen(0, "127.0.0.1");
  await once(stranger, "listening");
  strangerUrl = `http://127.0.0.1:${(stranger.address() as AddressInfo).port}`;
});
afterAll(async () => {
  await closeWindows(browser);
  stranger?.close();
});

/** Everything that the pages of this window were refused by their own policy. */
async function watched(context: BrowserContext): Promise<string[]> {
  const refused: string[] = [];
  await context.exposeFunction("noteRefused", (what: string) => refused.push(what));
  await context.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      const note = (window as unknown as { noteRefused: (what: string) => void }).noteRefused;
      note(
        `${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber} ${event.sample}`,
      );
    });
  });
  return refused;
}

describe("a page's own policy", () => {
  it.each(windows)(
    "refuses nothing of the workbench's own: dialogs, worker, canvas, pictures, paper (%s)",
    async (_, window, press) => {
      const context = await browser.newContext(kept(window));
      const refused = await watched(context);
      const page = await context.newPage();
      page.setDefaultTimeout(PATIENT_MS);
      const errors: string[] = [];
      page.on("pageerror", (error) => errors.push(error.message));
      const bench = new Bench(page);
      await bench.newBead(server.url);
      await bench.addPhoto(picture);
      await bench.photoShown();
      await bench.tool("Scale");
      await page.getByRole("button", { name: "Find the printed strip" }).click();
      await page
        .getByTestId("scale-note")
        .getByText(/Scale set/)
        .waitFor();
      await bench.drawLine([[500, 600], [800, 600]], "Undercut", press); // prettier-ignore
      await bench.saved();
      for (const part of ["Set-up", "Causes", "Verdict"] as const) await bench.section(part);
      const bead = page.url();
      for (const there of ["/sheet", "/card"])
        await page.goto(`${bead}${there}`, { waitUntil: "networkidle" });
      for (const there of ["/", "/trends", "/strip", "/criteria", "/exports", "/log"])
        await page.goto(`${server.url}${there}`, { waitUntil: "networkidle" });
      expect(refused).toEqual([]);
      expect(errors).toEqual([]);
      await context.close();
    },
  );

  it("refuses a script that somebody else's words brought in", async () => {
    const context = await browser.newContext(kept(desktop));
    const refused = await watched(context);
    const page = await context.newPage();
    await page.goto(server.url);
    await page.evaluate(() => {
      const image = document.createElement("div");
      image.innerHTML = '<img src="/nothing" onerror="window.ran = true">';
      document.body.append(image);
    });
    await expect.poll(() => refused.join()).toMatch(/script-src/);
    expect(await page.evaluate(() => "ran" in window)).toBe(false);
    await context.close();
  });
});

describe("a page of another site", () => {
  it("cannot show the workbench inside itself", async () => {
    const page = await (await browser.newContext(kept(desktop))).newPage();
    // Loaded, with whatever its frame was given.
    await page.goto(`${strangerUrl}/frame`, { waitUntil: "load" });
    const inside = page.frames().find((frame) => frame !== page.mainFrame());
    expect(inside).toBeDefined();
    expect(await inside?.getByRole("button", { name: "New bead" }).count()).toBe(0);
  });

  it("cannot post to a page, and neither can whoever says no origin", async () => {
    const page = await (await browser.newContext(kept(desktop))).newPage();
    await page.goto(`${strangerUrl}/form`);
    const [answer] = await Promise.all([
      page.waitForResponse((response) => response.url().startsWith(server.url)),
      page.getByRole("button", { name: "Go" }).click(),
    ]);
    expect(answer.status()).toBe(403);
    const bare = await fetch(server.url, { method: "POST", body: "x", headers: { "next-action": "x" } });
    expect(bare.status).toBe(403);
  });
});

describe("headers", () => {
  it("say on every answer that it is what it says, that nobody frames it, and where its address goes", async () => {
    for (const there of [
      "/",
      "/sign-in",
      "/api/health",
      "/api/openapi.json",
      "/strip/strip.pdf",
      "/nothing",
    ]) {
      const { headers } = await fetch(`${server.url}${there}`, { redirect: "manual" });
      expect(headers.get("x-content-type-options"), there).toBe("nosniff");
      expect(headers.get("referrer-policy"), there).toBe("same-origin");
      expect(headers.get("content-security-policy"), there).toContain("frame-ancestors 'none'");
      if (there.startsWith("/api/")) expect(headers.get("cache-control"), there).toContain("no-store");
    }
  });

  it("let a browser keep a photo's picture, whose address is its content's, but not that there is none", async () => {
    const bead = (await (await fetch(`${server.url}/api/beads`, { method: "POST", body: "{}" })).json()) as {
      id: string;
    };
    const sent = await fetch(`${server.url}/api/beads/${bead.id}/photos`, {
      method: "POST",
      headers: { "content-type": "image/jpeg" },
      body: readFileSync(picture),
    });
    const { sha256 } = ((await sent.json()) as { photo: { sha256: string } }).photo;
    for (const size of ["view", "small", "page", "thumb"]) {
      const there = await fetch(`${server.url}/api/photos/${sha256}/${size}`);
      expect(there.status, size).toBe(200);
      expect(there.headers.get("cache-control"), size).toBe("private, max-age=86400, immutable");
      expect(there.headers.get("x-content-type-options"), size).toBe("nosniff");
    }
    for (const none of [`${"0".repeat(64)}/small`, `${sha256}/large`]) {
      const answer = await fetch(`${server.url}/api/photos/${none}`);
      expect(answer.status, none).toBe(404);
      expect(answer.headers.get("cache-control"), none).toContain("no-store");
    }
  });

  it("give each page a nonce of its own, and no script or sheet a way around it", async () => {
    const policies = await Promise.all(
      [1, 2].map(async () => (await fetch(server.url)).headers.get("content-security-policy") ?? ""),
    );
    expect(policies[0]).not.toBe(policies[1]);
    for (const policy of policies) {
      const rule = (name: string) => policy.split("; ").find((one) => one.startsWith(`${name} `)) ?? "";
      expect(rule("script-src")).toMatch(/'nonce-[\w+/=]{24}' 'strict-dynamic'$/);
      expect(rule("script-src")).not.toMatch(/unsafe/);
      expect(rule("style-src")).not.toMatch(/unsafe/);
      expect(rule("style-src-elem")).not.toMatch(/unsafe/);
    }
  });
});
