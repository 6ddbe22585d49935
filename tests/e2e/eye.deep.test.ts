import { copyFileSync, mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { EyeBead } from "@/lib/eye";
import { closeWindows, openBrowser, phone, shoot } from "./support/browser";
import { startServer, type TestServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

const picture = path.join(
  fileURLToPath(new URL("../..", import.meta.url)),
  "demo-images/set/tee-undercut.jpg",
);

let server: TestServer;
let browser: Browser;

/** Enough beads of each look that none is drawn while this runs: rendering is tried on its own. */
function layPool(dataFolder: string): void {
  const eye = path.join(dataFolder, "eye");
  mkdirSync(eye, { recursive: true });
  for (const look of ["plain", "street"] as const)
    for (let i = 0; i < 18; i += 1) {
      const bead: EyeBead = {
        id: `${look}-${i}`,
        scenario: "tee-undercut",
        look,
        widthPx: 1788,
        heightPx: 1342,
        joint: "tee",
        thicknessMm: 8,
        lengthMm: 96,
        faults: [
          {
            kind: "undercut",
            place: "upper-toe",
            whole: false,
            outlinePx: [
              [390, 520],
              [1300, 500],
              [1300, 560],
              [390, 570],
            ],
            sizes: { lengthMm: 66.7, depthMm: 0.98 },
            alongMm: [2, 68],
          },
        ],
      };
      copyFileSync(picture, path.join(eye, `${bead.id}.jpg`));
      writeFileSync(path.join(eye, `${bead.id}.json`), JSON.stringify(bead));
    }
}

beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
  layPool(server.dataFolder);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

describe("a round of the training of the eye", () => {
  it("is pointed at and named on a phone, and tells what is there only when it is over", async () => {
    const page = await (await browser.newContext(phone)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await page.goto(`${server.url}/eye`);
    await page.getByRole("button", { name: "Begin" }).click();
    await page.getByRole("heading", { name: "Bead 1 of 6" }).waitFor();
    expect(await page.content()).not.toContain("66.7");
    for (let bead = 1; bead <= 6; bead += 1) {
      await page.getByRole("heading", { name: `Bead ${bead} of 6` }).waitFor();
      // The first is marked right, the second called something else, the third not at all.
      if (bead <= 2) {
        const box = (await page.getByTestId("eye-picture").boundingBox())!;
        await page
          .getByTestId("eye-picture")
          .click({ position: { x: 0.5 * box.width, y: 0.4 * box.height } });
        await page.getByLabel("Mark 1").selectOption(bead === 1 ? "undercut" : "overlap");
        await page.getByLabel("Size, mm").fill("60");
      }
      if (bead === 1) await shoot(page, "eye-phone");
      await page.getByRole("button", { name: bead === 3 ? "Nothing fails" : "It fails" }).click();
      await page.getByRole("button", { name: "Done with this bead" }).click();
    }
    await page
      .getByText("1 found, 4 missed, 1 named wrongly, 0 seen where nothing is, 0 sized wrongly.")
      .waitFor();
    await page.getByText("Called Cold lap (overlap): it is Undercut").waitFor();
    await shoot(page, "eye-phone-result");
    await page.goto(`${server.url}/eye`);
    await page.getByRole("row", { name: /Undercut 1 of 6/ }).waitFor();
    await page.goto(`${server.url}/eye/agreement`);
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.getByRole("row", { name: /Owner 5 of 6/ }).waitFor();
    await shoot(page, "eye-agreement");
    await page.context().close();
  });
});
