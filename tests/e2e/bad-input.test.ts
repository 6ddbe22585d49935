import { connect } from "node:net";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import type { Browser, Locator } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { itDeep } from "../setup/in-depth";
import { Bench } from "./support/bench";
import { closeWindows, desktop, openBrowser, shoot } from "./support/browser";
import { sharedServer, type SharedServer } from "./support/server";
import { PATIENT_MS } from "../setup/patience";

const root = fileURLToPath(new URL("../..", import.meta.url));
const jpeg = readFileSync(path.join(root, "demo-images/set/tee-undercut.jpg"));

let server: SharedServer;
let browser: Browser;
beforeAll(async () => {
  [server, browser] = await Promise.all([sharedServer(), openBrowser()]);
});
afterAll(async () => {
  await closeWindows(browser);
});

/** The workbench of a bead that has a record and nothing in it. */
async function newBeadPage(): Promise<{ bench: Bench; id: string }> {
  const made = await fetch(`${server.url}/api/beads`, { method: "POST", body: "{}" });
  const { id } = (await made.json()) as { id: string };
  const page = await (await browser.newContext(desktop)).newPage();
  page.setDefaultTimeout(PATIENT_MS);
  const bench = new Bench(page);
  await page.goto(`${server.url}/beads/${id}`);
  await page.getByLabel("Choose photos").waitFor({ state: "attached" });
  return { bench, id };
}

interface Stored {
  revision: number;
  photos: unknown[];
  content: {
    setup: Record<string, unknown>;
    title: string;
    photos: { drawing: { marks: { imperfection: string }[] } }[];
  };
}

async function stored(id: string): Promise<Stored> {
  return (await (await fetch(`${server.url}/api/beads/${id}`)).json()) as Stored;
}

const incoming = () => {
  try {
    return readdirSync(path.join(server.dataFolder, "photos/incoming"));
  } catch {
    return [];
  }
};

describe("files that are no photo", () => {
  it("each get one sentence on the screen, and nothing is kept", async () => {
    const { bench, id } = await newBeadPage();
    const script = Buffer.from("<script>alert(1)</script><html><body>not a picture</body></html>");
    const animated = await sharp([await frame("#333"), await frame("#999")], { join: { animated: true } })
      .gif()
      .toBuffer();
    const files = [
      { name: "bead.jpg", mimeType: "image/jpeg", buffer: script },
      { name: "cut.jpg", mimeType: "image/jpeg", buffer: jpeg.subarray(0, Math.floor(jpeg.length / 2)) },
      { name: "moving.gif", mimeType: "image/gif", buffer: animated },
      {
        name: "vector.svg",
        mimeType: "image/svg+xml",
        buffer: Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
      },
    ];
    for (const file of files) {
      await bench.addPhoto(file);
      const told = bench.page.getByRole("main").getByRole("alert");
      await told.getByText(file.name).waitFor();
      const text = await told.innerText();
      expect(text, file.name).toMatch(/[.]$/);
      expect(text, file.name).not.toMatch(/Error|at .*\(|undefined|\/work|node_modules/);
    }
    await shoot(bench.page, "bad-file");
    expect((await stored(id)).photos).toEqual([]);
    expect(incoming()).toEqual([]);
    await bench.page.context().close();
  });

  it("a photo with a wrong name is taken for what it is", async () => {
    const { bench, id } = await newBeadPage();
    const png = await sharp(jpeg).resize(600).png().toBuffer();
    await bench.addPhoto({ name: "really-a-png.jpg", mimeType: "image/jpeg", buffer: png });
    await bench.photoShown();
    expect((await stored(id)).photos).toMatchObject([{ format: "png" }]);
    await bench.page.context().close();
  });

  itDeep("the same photo again is noticed", async () => {
    const { bench, id } = await newBeadPage();
    const file = { name: "face.jpg", mimeType: "image/jpeg", buffer: jpeg };
    await bench.addPhoto(file);
    await bench.photoShown();
    await bench.page.getByLabel("Choose photos").setInputFiles(file);
    await bench.page.getByText("already on this bead").waitFor();
    expect((await stored(id)).photos).toHaveLength(1);
    await bench.page.context().close();
  });
});

async function frame(background: string): Promise<Buffer> {
  return sharp({ create: { width: 100, height: 80, channels: 3, background } })
    .png()
    .toBuffer();
}

describe("an upload cut off half way", () => {
  it("leaves nothing behind", async () => {
    const { bench, id } = await newBeadPage();
    await bench.page.context().close();
    const { hostname, port, host } = new URL(server.url);
    await new Promise<void>((resolve) => {
      const socket = connect(Number(port), hostname, () => {
        socket.write(
          `POST /api/beads/${id}/photos HTTP/1.1\r\nHost: ${host}\r\nContent-Length: ${jpeg.length}\r\n\r\n`,
        );
        socket.write(jpeg.subarray(0, Math.floor(jpeg.length / 2)), () =>
          setTimeout(() => socket.destroy(), 300),
        );
      });
      socket.on("close", () => resolve());
      socket.on("error", () => resolve());
    });
    await expect.poll(incoming, { timeout: PATIENT_MS }).toEqual([]);
    expect((await stored(id)).photos).toEqual([]);
    expect(await fetch(`${server.url}/api/health`).then((answer) => answer.ok)).toBe(true);
  });
});

/** What a screen reader reads after the field's name. */
async function describedBy(field: Locator): Promise<string> {
  const ids = (await field.getAttribute("aria-describedby")) ?? "";
  const texts = await Promise.all(
    ids.split(" ").map((id) => field.page().locator(`[id="${id}"]`).innerText()),
  );
  return texts.join(" ");
}

describe("numbers as people type them", () => {
  itDeep("understands commas, fractions and units, and keeps what it cannot read on the screen", async () => {
    const { bench, id } = await newBeadPage();
    await bench.section("Set-up");
    const volts = bench.page.getByLabel(/^Voltage(?! knob)/);
    const tip = bench.page.getByLabel(/^Tip to work/);
    const feed = bench.page.getByLabel(/^Wire feed(?! knob)/);
    await volts.fill("16,5");
    await tip.fill("3/4 in");
    await feed.fill("280 ipm");
    await feed.blur();
    await bench.saved();
    const { content } = await stored(id);
    expect(content.setup["volts"]).toBe(16.5);
    expect(content.setup["ctwdMm"]).toBeCloseTo(19.05, 9);
    expect(content.setup["wireFeedMPerMin"]).toBeCloseTo(7.112, 9);
    for (const typed of ["-3", "99999", "abc", "1/0"]) {
      await volts.fill(typed);
      await volts.blur();
      await expect.poll(() => volts.getAttribute("aria-invalid")).toBe("true");
      expect(await describedBy(volts), typed).toMatch(/(Type|type|Check|Leave|leave) .*\./);
      expect(await volts.inputValue()).toBe(typed);
      await bench.saved();
      // What could not be read is unknown, not the old number in disguise.
      expect((await stored(id)).content.setup["volts"]).not.toBe(Number(typed));
    }
    await bench.page.context().close();
  });
});

describe("two windows saving the same bead", () => {
  it("are told, and can keep the marks of both", async () => {
    const { bench, id } = await newBeadPage();
    await bench.addPhoto({ name: "face.jpg", mimeType: "image/jpeg", buffer: jpeg });
    await bench.photoShown();
    await bench.saved();
    const second = new Bench(await bench.page.context().newPage());
    await second.page.goto(bench.page.url());
    await second.photoShown();
    await bench.drawLine(
      [
        [400, 500],
        [600, 510],
      ],
      "Undercut",
    );
    await bench.saved();
    await second.drawLine(
      [
        [400, 800],
        [600, 810],
      ],
      "Cold lap",
    );
    await second.page.getByText("changed in another window").waitFor();
    await shoot(second.page, "two-windows");
    expect((await stored(id)).content.photos[0]?.drawing.marks.map((mark) => mark.imperfection)).toEqual([
      "undercut",
    ]);
    await second.page.getByRole("button", { name: /Keep both/ }).click();
    await second.expectMarks(2);
    await second.saved();
    const kept = (await stored(id)).content.photos[0]?.drawing.marks.map((mark) => mark.imperfection).sort();
    expect(kept).toEqual(["overlap", "undercut"]);
    await bench.page.context().close();
  });
});

describe("requests from elsewhere", () => {
  it("are refused: a foreign page, a foreign name for this machine", async () => {
    const { bench, id } = await newBeadPage();
    await bench.page.context().close();
    const foreign = await fetch(`${server.url}/api/beads/${id}/photos`, {
      method: "POST",
      body: jpeg,
      headers: { origin: "http://elsewhere.example" },
    });
    expect(foreign.status).toBe(403);
    const { hostname, port } = new URL(server.url);
    const answer = await new Promise<string>((resolve) => {
      const socket = connect(Number(port), hostname, () =>
        socket.write(`GET /api/beads/${id} HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n`),
      );
      let text = "";
      socket.on("data", (part) => (text += part.toString()));
      socket.on("close", () => resolve(text));
    });
    expect(answer).toMatch(/^HTTP\/1\.1 403/);
  });

  it("cannot reach a file beside the pictures", async () => {
    for (const name of ["../../toeline.db", "..%2f..%2ftoeline.db", "a".repeat(64)]) {
      const answer = await fetch(`${server.url}/api/photos/${name}/view`);
      expect(answer.status, name).toBe(404);
    }
  });
});
