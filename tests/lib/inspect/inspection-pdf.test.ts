import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { sealRecord, type SignedRecord } from "@/lib/inspect";
import { readRecord } from "@/lib/inspect/make-record";
import { inspectionPdf } from "@/lib/pdf";
import { palette } from "../pdf/sheet-of";
import { plain, readPdf } from "../pdf/read-pdf";
import { beadOf, HEIGHT_PX, job, recordOf, signature, WIDTH_PX } from "./build";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const set = path.join(root, "demo-images/set");
const out = path.join(root, "tests/.out/pdf");
const digest = "5e".repeat(32);
let pictures: Buffer[];

beforeAll(async () => {
  const files = readdirSync(set)
    .filter((name) => name.endsWith(".jpg"))
    .slice(0, 6);
  pictures = await Promise.all(
    files.map((name) =>
      sharp(path.join(set, name))
        .resize(WIDTH_PX / 4, HEIGHT_PX / 4, { fit: "cover" })
        .jpeg()
        .toBuffer(),
    ),
  );
});

type Printed = Awaited<ReturnType<typeof printAnew>>;
const printed = new Map<string, Promise<Printed>>();
/** The paper of a record; the same name is the same record, printed once. */
function print(record: SignedRecord, name: string): Promise<Printed> {
  const known = printed.get(name) ?? printAnew(record, name);
  printed.set(name, known);
  return known;
}

async function printAnew(record: SignedRecord, name: string) {
  const photos = new Map(
    record.beads
      .flatMap((bead) => bead.photos)
      .map(({ sha256 }, i) => [sha256, pictures[i % pictures.length] ?? new Uint8Array()]),
  );
  const bytes = await inspectionPdf({
    record,
    digest,
    signed: record.signature ? { standing: { kind: "before-keys" }, signer: "Vesna Harcourt" } : null,
    photos,
    recordUrl: "http://127.0.0.1:3000/inspections/i1/revisions/1",
    palette,
    createdAt: "2026-11-25T12:00:00.000Z",
  });
  // For people who look.
  mkdirSync(out, { recursive: true });
  writeFileSync(path.join(out, `${name}.pdf`), bytes);
  const pages = await readPdf(bytes);
  return { bytes, pages, text: plain(pages.map(({ text }) => text).join(" ")) };
}

const signed = (count: number) => sealRecord(recordOf({ beads: [beadOf(count)] }), null, signature).record;

describe.each([1, 30])("the report of a record with %i photos", (count) => {
  it("shows every photo, what was recorded, and on each page number, revision and digest", async () => {
    const { pages, text } = await print(signed(count), `inspection-${count}`);
    expect(pages.reduce((sum, { images }) => sum + images, 0)).toBe(count);
    pages.forEach((page, i) => {
      expect(page.text).toContain("Inspection 1, revision 1");
      expect(page.text).toContain(`page ${i + 1} of ${pages.length}`);
      expect(page.text).toContain(digest);
    });
    for (const words of [
      "WPS-12",
      "D-100",
      "W-07",
      "520 lx",
      "400 mm (15.7",
      "serial F-2",
      "100 %, that is 300 mm (11.811 in)",
      "Decision rule: Simple acceptance",
      "JCGM 106:2012, 8.2",
      "Undercut",
      "Vesna Harcourt, identification I-03",
      "Acceptance rests with the governing code",
    ])
      expect(text).toContain(words);
    expect(text).not.toContain("Quenby");
    expect(text).not.toContain("DRAFT");
    const tags = pages.flatMap((page) => page.tags);
    for (const tag of ["H1", "H2", "Table", "TH", "TD", "Figure", "Caption"]) expect(tags).toContain(tag);
    expect(tags.filter((tag) => tag === "Figure").length).toBe(count);
  });

  it("stands within the page", async () => {
    const { pages } = await print(signed(count), `inspection-${count}`);
    for (const { items } of pages)
      for (const { x, width, y } of items.filter(({ text }) => text.trim() !== "")) {
        expect(x).toBeGreaterThanOrEqual(39);
        expect(x + width).toBeLessThanOrEqual(595.28 - 39);
        expect(y).toBeGreaterThan(20);
      }
  });
});

describe("the report", () => {
  it("of a draft says on each page that it is one", async () => {
    const { pages } = await print(recordOf(), "inspection-draft");
    for (const { text } of pages) expect(text).toContain("DRAFT, not signed");
  });

  it("lists many welds in one table and tells their beads in the order of the welds, each heading with its photo", async () => {
    const numbers = ["W1", "W2", "W3", "W4"];
    const welds = numbers.map((number) => ({ ...job.welds[0]!, id: number, number }));
    const beads = numbers.map((weldId, i) => ({ ...beadOf(1), id: `b${i}`, number: 9 - i, weldId }));
    const seen = { kind: "length" as const, lengthMm: 80 };
    const looked = welds.map(({ id }) => ({ weldId: id, seen, seenNote: "" }));
    const record = recordOf({ job: { welds }, draft: { welds: looked }, beads });
    const { pages, text } = await print(record, "inspection-welds");
    const table = text.slice(text.indexOf("To inspect"), text.indexOf("Weld W1, bead"));
    for (const number of numbers) expect(table).toContain(`${number} Bracket, D-100, S235`);
    expect(table.match(/100 %, that is 300 mm \(11.8\d* in\) 80 mm \(3.15 in\)/g)).toHaveLength(4);
    const places = numbers.map((number, i) => text.indexOf(`Weld ${number}, bead ${9 - i}`));
    expect(places.every((place, i) => place > (places[i - 1] ?? 0))).toBe(true);
    for (const page of pages) {
      const headings = page.text.match(/Weld W\d, bead/g)?.length ?? 0;
      expect(page.images).toBe(headings);
    }
  });

  it("keeps what was asked and what was seen of each weld in columns of their own, whatever was written", async () => {
    const numbers = ["W1", "W2", "W3"];
    const note = "as far as the gusset reaches on the upper side, then the lower end by mirror";
    const extents = [
      { asked: { kind: "percent", percent: 33.33 }, seen: null, lengthMm: 12_345.6 },
      { asked: null, seen: { kind: "length", lengthMm: 80_000 }, lengthMm: 100_000 },
      { asked: { kind: "length", lengthMm: 150.25 }, seen: { kind: "percent", percent: 0 }, lengthMm: null },
    ] as const;
    const welds = numbers.map((id, i) => {
      const { asked, lengthMm } = extents[i]!;
      return { ...job.welds[0]!, id, number: id, asked, lengthMm, askedNote: note };
    });
    const looked = numbers.map((weldId, i) => ({ weldId, seen: extents[i]!.seen, seenNote: note }));
    const record = recordOf({ job: { welds }, draft: { welds: looked }, beads: [] });
    const { pages, text } = await print(record, "inspection-extents");
    for (const words of [
      "33.33 %, that is 4114.79 mm",
      "0 %;",
      "how much of it was seen is not recorded as a number",
    ])
      expect(text).toContain(words);
    const [page] = pages.filter((one) => one.text.includes("To inspect"));
    const head = page?.items.find((one) => one.text.includes("To inspect"));
    const seen = page?.items.find((one) => one.text.trim() === "Seen");
    const beads = page?.items.find((one) => one.text.trim() === "Beads");
    expect(head && seen && beads && head.x < seen.x && seen.x < beads.x).toBe(true);
    // A word that runs out of its column would lie over the next one.
    const lines = new Map<number, { x: number; width: number }[]>();
    for (const { text: words, ...item } of page?.items ?? [])
      if (words.trim()) lines.set(item.y, [...(lines.get(item.y) ?? []), item]);
    for (const line of lines.values()) {
      const sorted = line.toSorted((a, b) => a.x - b.x);
      sorted.forEach(({ x, width }, i) =>
        expect(x + width).toBeLessThanOrEqual((sorted[i + 1]?.x ?? 595) + 0.5),
      );
    }
  });

  it("of a record signed before extents were numbers prints what was signed, and the rule its settings name", async () => {
    const older = readFileSync(path.join(root, "tests/fixtures/older/signed-record-1.txt"), "utf8");
    const { text } = await print(readRecord(older), "inspection-older");
    for (const words of [
      "Result: Accepted",
      "To inspect 100 %",
      "Seen 20 %",
      "Decision rule: Simple acceptance",
    ])
      expect(text).toContain(words);
  });

  it("is the same bytes for the same record", async () => {
    const one = await print(signed(1), "inspection-1");
    const two = await printAnew(signed(1), "inspection-1");
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
  });
});
