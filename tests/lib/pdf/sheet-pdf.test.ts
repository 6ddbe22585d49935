import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { emptyBeadContent } from "@/lib/assess";
import { sheetPdf } from "@/lib/pdf";
import { readPdf, type ReadPage } from "./read-pdf";
import { HEIGHT_PX, inputFor, jpeg, knownPoints, sheetOf, WIDTH_PX } from "./sheet-of";
import { bodyOf, unsaid, withoutSpaces } from "./sheet-words";

describe.each([1, 30])("a sheet with %i photos", (count) => {
  const sheet = sheetOf(count);
  let bytes: Uint8Array;
  let pages: readonly ReadPage[];
  let picture: Buffer;

  beforeAll(async () => {
    picture = await jpeg();
    bytes = await sheetPdf(inputFor(sheet, picture));
    pages = await readPdf(bytes);
  });

  it("says everything the document says", () => {
    expect(sheet.setup.length).toBeGreaterThan(5);
    expect(sheet.marks).toHaveLength(count);
    expect(sheet.change).not.toBeNull();
    expect(sheet.verdict?.clauses.length).toBeGreaterThanOrEqual(2);
    expect(unsaid(sheet, pages)).toEqual([]);
  });

  it("numbers its pages, and names record and digest on each", () => {
    if (count === 1) expect(pages).toHaveLength(1);
    else expect(pages.length).toBeGreaterThanOrEqual(5);
    pages.forEach((page, i) => {
      expect(page.text).toContain(`page ${i + 1} of ${pages.length}`);
      expect(page.text).toContain("Bead 47, revision 3");
      expect(page.text).toContain("5e".repeat(32));
      expect(page.text).toContain("http://127.0.0.1:3000/beads/b");
    });
  });

  it("leaves no page but the last half blank", () => {
    // In points from the foot; the foot line itself lies under 70, and a page is 842 high.
    const ends = pages.map(({ items }) => Math.min(...items.filter(({ y }) => y > 70).map(({ y }) => y)));
    expect(ends.slice(0, -1).filter((y) => y > 200)).toEqual([]);
  });

  it("embeds every picture once and keeps everything on the page", () => {
    expect(pages.reduce((sum, page) => sum + page.images, 0)).toBe(count);
    const outside = pages.flatMap(({ items }) =>
      items.filter(({ x, y, width }) => x < 33 || x + width > 595.28 - 33 || y < 14 || y > 841.89 - 30),
    );
    expect(outside).toEqual([]);
    expect(pages.flatMap(({ items }) => items).length).toBeGreaterThan(50);
  });

  it("repeats a table's titles on each page it goes on to", () => {
    const titled = pages.filter(({ text }) => text.includes("ISO 6520-1")).length;
    const first = withoutSpaces("note of mark 1");
    const last = withoutSpaces(`note of mark ${count}`);
    const holds = (words: string) => pages.findIndex(({ text }) => withoutSpaces(text).includes(words));
    expect(holds(first)).toBeGreaterThanOrEqual(0);
    expect(titled).toBe(holds(last) - holds(first) + 1);
    if (count === 30) expect(titled).toBeGreaterThan(1);
  });

  it("can be walked by a screen reader", () => {
    const tags = pages.flatMap((page) => page.tags);
    for (const tag of ["H1", "H2", "P", "Table", "TH", "TD"]) expect(tags).toContain(tag);
    expect(tags.filter((tag) => tag === "Figure")).toHaveLength(count);
  });

  it("is the same bytes for the same input", async () => {
    expect(Buffer.compare(await sheetPdf(inputFor(sheet, picture)), bytes)).toBe(0);
  });

  it("embeds a picture byte for byte, so one without metadata brings none", async () => {
    const tagged = await sharp(picture)
      .withExif({ IFD0: { Copyright: "x" } })
      .jpeg()
      .toBuffer();
    expect(tagged.includes("Exif\0")).toBe(true);
    expect(Buffer.from(bytes).includes(picture)).toBe(true);
    expect(Buffer.from(bytes).includes("Exif\0")).toBe(false);
  });

  it("knows no other time than the one given", () => {
    const text = Buffer.from(bytes).toString("latin1");
    const times = text.match(/D:\d{14}|\d{4}-\d\d-\d\dT\d\d:\d\d/g) ?? [];
    expect([...new Set(times)].sort()).toEqual(["2026-11-25T10:00", "D:20261125100000"]);
    expect(text.slice(0, 8)).toBe("%PDF-1.7");
  });
});

describe("the marks", () => {
  it("are vectors at their places on the photo, within 0.1 mm", async () => {
    const sheet = sheetOf(1);
    const [page] = await readPdf(await sheetPdf(inputFor(sheet, await jpeg())));
    const box = page?.imageBoxes[0];
    const [left, bottom, k] = [box?.x ?? NaN, box?.y ?? NaN, (box?.width ?? NaN) / WIDTH_PX];
    const nearest = (x: number, y: number) =>
      Math.min(...(page?.pathPoints ?? []).map((point) => Math.hypot(point.x - x, point.y - y)));
    for (const { x, y } of knownPoints)
      expect(nearest(left + x * k, bottom + (HEIGHT_PX - y) * k)).toBeLessThan(0.1 * (72 / 25.4));
    // The measure itself can fail: no path passes where nothing is drawn.
    expect(nearest(left + 1000 * k, bottom + (HEIGHT_PX - 400) * k)).toBeGreaterThan(2);
  });

  it("stand without a picture that is missing, and the page says so", async () => {
    const input = { ...inputFor(sheetOf(1), await jpeg()), photos: new Map<string, Uint8Array>() };
    const [page] = await readPdf(await sheetPdf(input));
    expect(page?.images).toBe(0);
    expect(page?.text).toContain("The picture is missing.");
    expect(page?.pathPoints.length).toBeGreaterThan(20);
  });
});

describe("what people write", () => {
  it("breaks words wider than their column and notes longer than a page", async () => {
    const note = Array.from({ length: 300 }, (_, i) => `line${i}`).join("\n");
    const sheet = sheetOf(1, {
      title: "W".repeat(120),
      welder: "m".repeat(80),
      judgement: { ...emptyBeadContent.judgement, note },
    });
    const pages = await readPdf(await sheetPdf(inputFor(sheet, await jpeg())));
    const items = pages.flatMap((page) => page.items);
    expect(items.filter(({ x, width }) => x + width > 595.28 - 39)).toEqual([]);
    expect(items.filter(({ text }) => /^line\d+$/.test(text.trim()))).toHaveLength(300);
    expect(withoutSpaces(bodyOf(pages))).toContain("W".repeat(120));
  });
});
