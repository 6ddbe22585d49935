import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { plain, readPdf } from "../lib/pdf/read-pdf";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, phone, shoot } from "./support/browser";
import { listened } from "./support/listened";
import { startServer, type TestServer } from "./support/server";
import { repacked, resigned } from "../setup/forge";
import { itDeep } from "../setup/in-depth";
import { PATIENT_MS } from "../setup/patience";

const jpeg = path.join(fileURLToPath(new URL("../..", import.meta.url)), "demo-images/set/tee-undercut.jpg");
const PASSPHRASE = "eleven copper kettles";

let server: TestServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([startServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
  await server?.stop();
});

async function addInspector(page: Page): Promise<void> {
  await page.goto(`${server.url}/people`);
  await page.getByLabel("Name", { exact: true }).last().fill("Vesna Harcourt");
  await page
    .getByLabel(/Identification/)
    .last()
    .fill("I-03");
  await listened(page);
  await page.getByRole("checkbox", { name: "Inspector" }).last().check();
  await page.getByRole("button", { name: "Add" }).click();
  await page.getByText("Vesna Harcourt was added.").waitFor();
  await page.reload();
  await page.getByText("Open an account").click();
  await page.getByLabel("Sign-in name").fill("vesna");
  await page.getByRole("button", { name: "Open account" }).click();
  const told = await page.getByText(/One-time code:/).innerText();
  const code = /[A-Z0-9]{5}(-[A-Z0-9]{5}){3}/.exec(told)?.[0] ?? "";
  await page.goto(`${server.url}/passphrase`);
  await page.getByLabel("One-time code").fill(code);
  await page.getByLabel("Your new passphrase").fill(PASSPHRASE);
  await page.getByRole("button", { name: "Choose the passphrase" }).click();
  await page.getByText("Your passphrase is chosen.").waitFor();
  await shoot(page, "passphrase-by-code");
  // It works once.
  await page.getByLabel("One-time code").fill(code);
  await page.getByLabel("Your new passphrase").fill("another of theirs");
  await page.getByRole("button", { name: "Choose the passphrase" }).click();
  await page.getByText("This code is not known, was used, or is too old.").waitFor();
}

async function addJob(page: Page): Promise<string> {
  await page.goto(`${server.url}/jobs`);
  await page.getByLabel("Title").fill("Bracket run 4");
  await page.getByRole("button", { name: "Make the job" }).click();
  await page.waitForURL(/\/jobs\/[a-z0-9]+$/);
  await page.getByLabel("Maker of the part").fill("Harrow Basin Training Bay");
  await page.getByLabel("Procedure (WPS)").fill("WPS-12");
  await page.getByLabel("Welding process").selectOption("FCAW-S");
  await page.getByLabel("Acceptance criteria").selectOption("iso-5817-c");
  await page.getByRole("button", { name: "Add a part" }).click();
  await page.getByLabel("Drawing number").fill("D-100");
  await page.getByLabel("Material").fill("S235");
  await page.getByLabel("Thickness, mm").fill("10");
  await page.getByRole("button", { name: "Add a weld" }).click();
  await page.getByLabel("Joint").selectOption("tee");
  await page.getByLabel("Position").selectOption("horizontal");
  await page.getByLabel("or their mark").fill("W-07");
  await page.getByLabel("Length of the weld, mm").fill("240");
  // Asked in millimetres, then in percent of the length: the number that stands there is read in the unit chosen.
  const asked = page.getByLabel("To inspect", { exact: true });
  const unit = page.getByLabel("Unit of: To inspect");
  await unit.selectOption("length");
  await asked.fill("240");
  await unit.selectOption("percent");
  await page.getByText("“240” is more than 100 %").waitFor();
  await asked.fill("100");
  await page.getByRole("button", { name: "Save the job" }).click();
  await page.getByText("Saved.", { exact: true }).waitFor();
  return page.url();
}

async function sign(page: Page, passphrase: string): Promise<void> {
  await page.getByLabel("Passphrase of the inspector").fill(passphrase);
  await page.getByRole("button", { name: "Sign the record" }).click();
}

/** On a phone nothing runs out of the page to the side, and what is pressed or typed in is as large as a thumb. */
async function fitsPhone(address: string, name: string): Promise<void> {
  const small = await (await browser.newContext(phone)).newPage();
  await small.goto(server.url + address);
  await small.getByRole("heading", { level: 1 }).waitFor();
  const [width, scroll] = await small.evaluate(() => [innerWidth, document.documentElement.scrollWidth]);
  expect(scroll, name).toBeLessThanOrEqual(width ?? 0);
  for (const field of await small.getByLabel(/Seen of weld|To inspect/).all()) {
    const box = await field.boundingBox();
    expect(box?.height, name).toBeGreaterThanOrEqual(44);
    expect(box?.width, name).toBeGreaterThanOrEqual(88);
  }
  await shoot(small, name);
  await small.context().close();
}

const pdf = async (address: string) => {
  const answer = await fetch(`${server.url}${address}`);
  expect(answer.status, address).toBe(200);
  const pages = await readPdf(new Uint8Array(await answer.arrayBuffer()));
  return plain(pages.map(({ text }) => text).join(" "));
};

describe("a job", () => {
  /** What the first of these signs, and the next one checks. */
  let made = { job: "", inspection: "" };

  itDeep("in two windows loses neither version, and saves the one that was chosen", async () => {
    const context = await browser.newContext(desktop);
    const [one, two] = [await context.newPage(), await context.newPage()];
    for (const page of [one, two]) page.setDefaultTimeout(PATIENT_MS);
    const save = (page: Page) => page.getByRole("button", { name: "Save the job" }).click();
    const title = (page: Page) => page.getByLabel("Title").inputValue();
    await one.goto(`${server.url}/jobs`);
    await one.getByLabel("Title").fill("Ladder frame");
    await one.getByRole("button", { name: "Make the job" }).click();
    await one.waitForURL(/\/jobs\/[a-z0-9]+$/);
    await two.goto(one.url());
    await one.getByLabel("Title").fill("Ladder frame, left");
    await save(one);
    await one.getByText("Saved.", { exact: true }).waitFor();
    await two.getByLabel("Title").fill("Ladder frame, right");
    await save(two);
    await two.getByText("changed in another window").waitFor();
    await shoot(two, "job-two-windows");
    expect(await title(two)).toBe("Ladder frame, right");
    await two.getByRole("button", { name: /Take the other one/ }).click();
    await two.getByRole("button", { name: "Bring mine back" }).waitFor();
    expect(await title(two)).toBe("Ladder frame, left");
    await two.getByRole("button", { name: "Bring mine back" }).click();
    expect(await title(two)).toBe("Ladder frame, right");
    await save(two);
    await two.getByText("Saved.", { exact: true }).waitFor();
    // Now the first window is behind: it keeps its own over the other.
    await one.getByLabel("Title").fill("Ladder frame, both");
    await save(one);
    await one.getByRole("button", { name: "Keep mine" }).click();
    await one.getByText("Saved.", { exact: true }).waitFor();
    await two.reload();
    expect(await title(two)).toBe("Ladder frame, both");
    await context.close();
  });

  it("goes from its bead to a signed report and to a correction as revision 2", async () => {
    const page = await (await browser.newContext(desktop)).newPage();
    page.setDefaultTimeout(PATIENT_MS);
    await addInspector(page);
    const job = await addJob(page);
    await shoot(page, "job");
    await page.getByRole("button", { name: "New bead for this weld" }).click();
    await page.waitForURL(/\/beads\/[a-z0-9]+$/);
    const bench = new Bench(page);
    await bench.addPhoto(jpeg);
    await bench.photoShown();
    await bench.drawLine(
      [
        [400, 500],
        [600, 510],
      ],
      "Undercut",
    );
    await bench.saved();

    await page.goto(job);
    await page.getByRole("button", { name: "New inspection" }).click();
    await page.waitForURL(/\/inspections\/[a-z0-9]+$/);
    const inspection = new URL(page.url()).pathname;
    await page.getByLabel("Day of the inspection").fill("2026-11-25");
    await page.getByLabel("Look", { exact: true }).selectOption("direct");
    await page.getByLabel("Light at the surface, lx").fill("300");
    await page.getByLabel("Distance of the eye, mm").fill("400");
    await page.getByLabel("Viewing angle, degrees").fill("60");
    await page.getByLabel("Surface", { exact: true }).fill("brushed");
    await page.getByLabel("Seen of weld W1").first().fill("20");
    await page.getByText("Missing: 80 %, 192 mm (7.559 in).").waitFor();
    await page.getByRole("button", { name: "Save the inspection" }).click();
    await page.getByText("The light was 300 lx; ISO 17637 asks for at least 350 lx.").first().waitFor();
    const open = page.getByRole("region", { name: "Weld W1 is open" });
    await open.getByText("80 %, 192 mm (7.559 in) of the weld is still to be looked at.").waitFor();
    await open.getByText("Look at the rest of it, then write how much was seen.").waitFor();
    await page.getByText("Simple acceptance:").first().waitFor();
    await fitsPhone(inspection, "inspection-draft-phone");
    await shoot(page, "inspection-draft");
    expect(await pdf(`/api${inspection}/pdf?draft`)).toContain("DRAFT, not signed");

    await page.getByLabel("What you say to the open points").fill("Seen; they stay open.");
    await sign(page, "not the passphrase at all");
    await page.getByText("This is not the passphrase of the inspector, so nothing was signed.").waitFor();
    await sign(page, PASSPHRASE);
    await page.waitForURL(/\/revisions\/1$/);
    await shoot(page, "signed-record");
    const digest =
      /[0-9a-f]{64}/.exec(
        await page
          .getByText(/^SHA-256 /)
          .first()
          .innerText(),
      )?.[0] ?? "none";
    const first = await pdf(`/api${inspection}/pdf?revision=1`);
    for (const words of [
      digest,
      "W-07",
      "Undercut",
      "WPS-12",
      "300 lx",
      "100 %, that is 240 mm",
      "20 %, that is 48 mm",
      "Simple acceptance",
      "Inspection 1, revision 1",
      "page 1 of",
    ])
      expect(first).toContain(words);

    await page.goto(server.url + inspection);
    await page.getByRole("button", { name: "Correct" }).click();
    await page.getByLabel("Light at the surface, lx").fill("550");
    await page.getByRole("button", { name: "All that was asked of weld W1" }).click();
    await page.getByText("All of it was seen.").waitFor();
    await page.getByRole("button", { name: "Save the inspection" }).click();
    await page.getByText("Saved.", { exact: true }).waitFor();
    // What is signed is what is shown: until the record below is that of the saved look, the server refuses.
    await open.getByText("80 %, 192 mm (7.559 in) of the weld is still").waitFor({ state: "detached" });
    await page.getByLabel("What you say to the open points").fill("Seen; they stay open.");
    await sign(page, PASSPHRASE);
    await page.getByText(/A further revision needs a reason/).waitFor();
    await page.getByLabel("Why the record is corrected").fill("The lamp was read again.");
    await sign(page, PASSPHRASE);
    await page.waitForURL(/\/revisions\/2$/);
    await page.getByText("Viewing conditions › Light at the surface: was 300 lx, now 550 lx").waitFor();
    await page.getByText(/Weld W1 › Seen: was 20 %, that is 48 mm .*, now 100 %, that is 240 mm/).waitFor();
    expect(await pdf(`/api${inspection}/pdf?revision=1`)).toBe(first);
    expect(await pdf(`/api${inspection}/pdf?revision=2`)).toContain("The lamp was read again.");
    await page.goto(`${server.url}${inspection}/revisions/1`);
    await page.getByText("Revision 2 stands in its place.").waitFor();
    await page.context().close();
    made = { job, inspection };
  });

  itDeep(
    "is checked from its archive by anybody, and by a head of the log that was kept elsewhere",
    async () => {
      const page = await (await browser.newContext(desktop)).newPage();
      page.setDefaultTimeout(PATIENT_MS);
      const { job, inspection } = made;
      // As it is; then with one word of the signed text changed.
      const jobId = new URL(job).pathname.split("/").at(-1) ?? "";
      const packed = await fetch(`${server.url}/api/export/archive.zip?job=${jobId}`);
      const archive = new Uint8Array(await packed.arrayBuffer());
      const check = async (bytes: Uint8Array) => {
        await page.goto(`${server.url}/check`);
        const file = { name: "job.zip", mimeType: "application/zip", buffer: Buffer.from(bytes) };
        await page.getByLabel("Archive (.zip)").setInputFiles(file);
        await page.getByRole("button", { name: "Verify it" }).click();
      };
      await check(archive);
      await page.getByRole("heading", { name: "Everything in it fits" }).waitFor();
      await page.getByText(/Inspection 1, revision 2: signed by key ([0-9a-f]{4} ){5}/).waitFor();
      await shoot(page, "check-archive");
      await check(
        repacked(archive, (manifest) => resigned(manifest, (one) => (one.statement = "All sound."))),
      );
      await page.getByRole("heading", { name: "Not everything in it fits" }).waitFor();
      await page.getByText(/Inspection 1, revision 1: UNVERIFIED/).waitFor();
      await shoot(page, "check-archive-changed");

      // The head of the log, kept and given back.
      await page.goto(`${server.url}/log`);
      const head = await (await fetch(`${server.url}/api/log/head`)).text();
      await page.getByLabel("A head of the log kept elsewhere").fill(head);
      await page.getByRole("button", { name: "Verify everything" }).click();
      await page.getByText(/Everything fits/).waitFor();
      await page.getByLabel("A head of the log kept elsewhere").fill(`1:${"0".repeat(64)}`);
      await page.getByRole("button", { name: "Verify everything" }).click();
      await page.getByText("Entry 1 is not the one that was noted elsewhere").waitFor();
      await shoot(page, "log-noted-head");
      await page.goto(`${server.url}/keys`);
      await page.getByRole("heading", { name: "Vesna Harcourt" }).waitFor();
      await shoot(page, "keys");
      await page.context().close();
      for (const address of ["/check", "/keys", "/log", "/passphrase"])
        await fitsPhone(address, `${address.slice(1)}-phone`);

      await fitsPhone(new URL(job).pathname, "job-phone");
      await fitsPhone(`${inspection}/revisions/2`, "signed-record-phone");
    },
  );

  itDeep(
    "is read weld by weld: readings first, next by key, a bead found by words, nothing lost, asked against seen",
    async () => {
      const page = await (await browser.newContext(desktop)).newPage();
      page.setDefaultTimeout(PATIENT_MS);
      await page.goto(`${server.url}/instruments`);
      await page.getByLabel("Kind").last().selectOption("fillet-gauge");
      await page.getByLabel("Name", { exact: true }).last().fill("Leg gauge 2");
      await page.getByLabel("Serial number").last().fill("L-2");
      await page.getByLabel("Smallest step").last().fill("0.5");
      await page.getByLabel("Calibrated on").last().fill("2027-01-02");
      await page.getByLabel("Calibration due").last().fill("2027-01-01");
      await page.getByRole("button", { name: "Add", exact: true }).click();
      await page.getByText("A calibration cannot be due before it was done.").waitFor();
      await page.getByLabel("Calibrated on").last().fill("2026-01-02");
      await page.getByRole("button", { name: "Add", exact: true }).click();
      await page.getByText("Leg gauge 2 was added.").waitFor();

      // The same weld twice over from one that was written down, and a bead that is there already.
      await addJob(page);
      await page.getByLabel("Leg asked for, mm").fill("6");
      await page.getByRole("button", { name: "Another like weld W1" }).click();
      expect(await page.getByLabel("Weld number").last().inputValue()).toBe("W2");
      expect(await page.getByLabel("Leg asked for, mm").last().inputValue()).toBe("6");
      await page.getByRole("button", { name: "Save the job" }).click();
      await page.getByText("Saved.", { exact: true }).waitFor();
      await page.getByRole("button", { name: "New bead for this weld" }).first().click();
      await page.waitForURL(/\/beads\/[a-z0-9]+$/);
      expect(await page.getByLabel("Run by").inputValue()).toBe("W-07");
      await page.getByRole("link", { name: /Weld W1, job/ }).click();
      await page.waitForURL(/\/jobs\/[a-z0-9]+$/);
      const begun = await fetch(`${server.url}/api/beads`, {
        method: "POST",
        headers: { "content-type": "application/json", origin: server.url },
        body: JSON.stringify({ title: "Gusset run left over" }),
      });
      expect(begun.status, await begun.text()).toBeLessThan(300);

      await page.getByRole("button", { name: "New inspection" }).click();
      await page.waitForURL(/\/inspections\/[a-z0-9]+$/);
      const inspection = new URL(page.url()).pathname;
      await page.getByLabel("Certificate number").fill("VT-204");
      await page.getByLabel("Valid until").fill("2027-05-01");
      await page.getByLabel("Day of the inspection").fill("2026-11-25");
      await page.getByLabel(/Leg gauge 2/).check();
      // Nobody presses "Save": it is there all the same.
      await page.getByText("Saved.", { exact: true }).waitFor();
      await page.getByRole("link", { name: "Weld W1", exact: true }).click();
      await page.getByRole("heading", { name: /Weld W1, inspection/ }).waitFor();

      // From reading to reading with Tab alone, in the order of the bench.
      await page.getByLabel("Leg on the first plate, mm").focus();
      for (const value of ["6.5", "6", "4.4", "0", "0", "240"]) {
        await page.keyboard.type(value);
        await page.keyboard.press("Tab");
      }
      expect(await page.getByLabel("Length of the weld, mm").inputValue()).toBe("240");
      await page.getByRole("button", { name: "All that was asked of weld W1" }).click();
      await page.getByText("judged for 6 mm; Leg on the first plate 6.5 mm", { exact: false }).waitFor();
      await shoot(page, "weld-screen");
      await fitsPhone(`${new URL(page.url()).pathname}`, "weld-screen-phone");
      await page.keyboard.press("Control+Enter");
      await page.getByRole("heading", { name: /Weld W2, inspection/ }).waitFor();
      await page.getByLabel("Bead", { exact: true }).fill("gusset");
      await page.getByRole("button", { name: "Find" }).click();
      await page.getByRole("button", { name: /^Attach \d+: Gusset run left over/ }).click();
      await page.getByLabel("Leg on the first plate, mm").fill("5");
      // At once, before anything had time to be saved.
      await page.keyboard.press("Control+Shift+Enter");
      await page.getByRole("heading", { name: /Weld W1, inspection/ }).waitFor();
      expect(await page.getByLabel("Leg on the second plate, mm").inputValue()).toBe("6");
      await page.keyboard.press("Control+Enter");
      await page.getByRole("heading", { name: /Weld W2, inspection/ }).waitFor();
      expect(await page.getByLabel("Leg on the first plate, mm").inputValue()).toBe("5");
      await page.goto(server.url + inspection);
      await page.getByText("is asked on the job, and bead").first().waitFor();
      await page.getByText("Look at a sample of the welds").click();
      await page.getByLabel("How many").fill("50");
      await page.getByLabel("Why a sample").fill("contract, clause 8");
      await page.getByRole("button", { name: "Draw the sample" }).click();
      await page.getByText(/50 % of all welds, drawn out of 2: W\d/).waitFor();
      await page.getByText("seed").first().waitFor();
      await shoot(page, "inspection-sample");
      await fitsPhone(inspection, "inspection-sample-phone");
      await page.context().close();
    },
  );
});
