import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { sealRecord, type SignedRecord } from "@/lib/inspect";
import { readRecord } from "@/lib/inspect/make-record";
import { inspectionPdf } from "@/lib/pdf";
import type { InspectionPdfInput } from "@/lib/pdf/inspection-input";
import { palette } from "../pdf/sheet-of";
import { plain, readPdf } from "../pdf/read-pdf";
import { inDepth } from "../../setup/in-depth";
import { beadOf, HEIGHT_PX, job, recordOf, sha, signature, soundBead, undercut, WIDTH_PX } from "./build";

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
function print(
  record: SignedRecord,
  name: string,
  change: Partial<InspectionPdfInput> = {},
): Promise<Printed> {
  const known = printed.get(name) ?? printAnew(record, name, change);
  printed.set(name, known);
  return known;
}

async function printAnew(record: SignedRecord, name: string, change: Partial<InspectionPdfInput> = {}) {
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
    recordUrl: null,
    units: "metric",
    palette,
    createdAt: "2026-11-25T12:00:00.000Z",
    ...change,
  });
  // For people who look.
  mkdirSync(out, { recursive: true });
  writeFileSync(path.join(out, `${name}.pdf`), bytes);
  const pages = await readPdf(bytes);
  return { bytes, pages, text: plain(pages.map(({ text }) => text).join(" ")) };
}

const reason = "The second leg was read again with gauge 3.";
/** A record with everything on it that the first page is to hold. */
const signed = (count: number) => {
  const record = recordOf({
    job: { customer: "Quarry Lane Frames" },
    draft: { reportNumber: "VT-2026-118" },
    beads: [beadOf(count)],
  });
  const again = { ...signature, revision: 2, reason, previousDigest: sha(7) };
  return sealRecord(record, record, again).record;
};

/** Text that lies over a picture, without what is only white space. */
const overPictures = ({ items, imageBoxes }: Printed["pages"][number]): readonly string[] =>
  items
    .filter(({ text }) => text.trim() !== "")
    .filter(({ x, y, width }) =>
      imageBoxes.some(
        (box) => x + width > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height,
      ),
    )
    .map(({ text }) => text.trim());

describe.each(inDepth([30], [1, 4, 30]))("the report of a record with %i photos", (count) => {
  it("says on its first page for whom, how each weld stands, who signed by what right, which revision and why", async () => {
    const { pages } = await print(signed(count), `inspection-${count}`);
    const first = pages[0]?.text ?? "";
    for (const words of [
      "Customer Quarry Lane Frames",
      "Maker of the part Harrow Basin Training Bay",
      "Report number VT-2026-118",
      "Result: Open",
      "W1 Open ISO 5817 level C, 2014 100 %, that is 300 mm",
      "Signer: Vesna Harcourt, identification I-03",
      "certificate VT-204, level 2, valid until 2027-05-01",
      `Revision 2. Reason of this revision: ${reason}`,
      `SHA-256 of the signed text ${digest}`,
      "Acceptance rests with the governing code",
    ])
      expect(first).toContain(words);
    for (const { text } of pages.slice(1)) expect(text).not.toContain("Signer:");
  });

  it("shows every photo, what was recorded, and on each page number, revision and digest", async () => {
    const { pages, text } = await print(signed(count), `inspection-${count}`);
    expect(pages.reduce((sum, { images }) => sum + images, 0)).toBe(count);
    pages.forEach((page, i) => {
      expect(page.text).toContain("Inspection 1, revision 2");
      expect(page.text).toContain(`page ${i + 1} of ${pages.length}`);
      expect(page.text).toContain(digest);
    });
    for (const words of [
      "WPS-12",
      "D-100",
      "W-07",
      "520 lx",
      "Distance of the eye 400 mm",
      "Gauge 2 fillet gauge F-2",
      "Decision rule: Simple acceptance",
      "JCGM 106:2012, 8.2",
      "Undercut",
    ])
      expect(text).toContain(words);
    for (const words of ["Quenby", "DRAFT", "127.0.0.1", "localhost"]) expect(text).not.toContain(words);
    const tags = pages.flatMap((page) => page.tags);
    for (const tag of ["H1", "H2", "Table", "TH", "TD", "Figure", "Caption"]) expect(tags).toContain(tag);
    expect(tags.filter((tag) => tag === "Figure").length).toBe(count);
  });

  it("lays no word over a bead: only numbers at the marks and the length at the scale", async () => {
    const { pages } = await print(signed(count), `inspection-${count}`);
    const over = pages.flatMap(overPictures);
    expect(over.filter((text) => /^\d+$/.test(text))).toHaveLength(count);
    expect(over.filter((text) => !/^\d+$/.test(text) && text !== "20 mm")).toEqual([]);
  });

  it("gives pictures the size they need, none over another, all within the page", async () => {
    const { pages } = await print(signed(count), `inspection-${count}`);
    // Points: one picture at about half a page's width, a few still large enough to see a toe, many three to a row.
    const least = count === 1 ? 300 : count === 4 ? 200 : 140;
    for (const { imageBoxes } of pages)
      imageBoxes.forEach((box, i) => {
        expect(box.width).toBeGreaterThan(least);
        expect(box.width / box.height).toBeCloseTo(WIDTH_PX / HEIGHT_PX, 1);
        expect(box.x).toBeGreaterThanOrEqual(39);
        expect(box.x + box.width).toBeLessThanOrEqual(595.28 - 39);
        expect(box.y).toBeGreaterThan(70);
        for (const other of imageBoxes.slice(i + 1)) {
          const across = Math.min(box.x + box.width, other.x + other.width) - Math.max(box.x, other.x);
          const down = Math.min(box.y + box.height, other.y + other.height) - Math.max(box.y, other.y);
          expect(Math.min(across, down)).toBeLessThanOrEqual(0);
        }
      });
  });

  it("leaves no page of pictures half empty, and ends on a page that is more than a line", async () => {
    const { pages } = await print(signed(count), `inspection-${count}`);
    const lowest = pages.map(({ items }) => Math.min(...items.filter(({ y }) => y > 75).map(({ y }) => y)));
    // A page that is followed by more pictures has no room for another row of them.
    pages.slice(0, -1).forEach((page, i) => {
      if (page.images > 0 && (pages[i + 1]?.images ?? 0) > 0) expect(lowest[i]).toBeLessThan(80 + 175);
    });
    expect(pages.length).toBeLessThanOrEqual(count === 30 ? 6 : 3);
    expect(
      pages.at(-1)?.items.filter(({ y, text }) => y > 75 && y < 790 && text.trim()).length,
    ).toBeGreaterThan(3);
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
    const table = text.slice(text.indexOf("Welds Weld Part"), text.indexOf("Checklist of weld W1"));
    const front = pages[0]?.text ?? "";
    for (const number of numbers) expect(front).toContain(`${number} Open`);
    for (const number of numbers) expect(table).toContain(`${number} Bracket, D-100, S235`);
    expect(table.match(/100 %, that is 300 mm 80 mm/g)).toHaveLength(4);
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
    const [page] = pages.filter((one) => one.text.includes("Weld Part, drawing"));
    const until = page?.items.findIndex((one) => one.text.includes("Checklist")) ?? 0;
    const items = page?.items.slice(0, until < 0 ? undefined : until) ?? [];
    const head = items.findLast((one) => one.text.includes("To inspect"));
    const seen = items.findLast((one) => one.text.trim() === "Seen");
    const beads = items.findLast((one) => one.text.trim() === "Beads");
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

  it("says in which role it was signed, and where the inspector is the welder", async () => {
    const plain = await print(signed(1), "inspection-1");
    expect(plain.text).toContain("Signed in the role of inspector. Inspector's certificate VT-204");
    expect(plain.text).not.toContain("Inspected by the welder");
    const again = sealRecord(recordOf({ beads: [beadOf(1)] }), null, {
      ...signature,
      ranWelds: ["w1"],
    }).record;
    const { pages } = await print(again, "inspection-own-weld");
    expect(pages[0]?.text).toContain("Inspected by the welder: whoever signed ran weld W1.");
    const standing = { kind: "unverified", why: "text-changed", imported: true } as const;
    const imported = await print(again, "inspection-own-weld-imported", {
      signed: { standing, signer: null },
    });
    expect(imported.text).not.toContain("Signed in the role");
  });

  it("tells readings in words with their units, in the system that is chosen, and names a table once", async () => {
    const depth = {
      quantity: "depth" as const,
      valueMm: 0.4,
      instrument: "Gauge 2, no. F-2",
      resolutionMm: 0.1,
    };
    const bead = { ...soundBead(), photos: beadOf(1).photos };
    const photos = beadOf(1, {}, [undercut([depth])]).content.photos;
    const record = recordOf({ beads: [{ ...bead, content: { ...bead.content, photos } }] });
    const mm = (await print(record, "inspection-read")).text;
    const inches = (await print(record, "inspection-read-inch", { units: "inch" })).text;
    const both = (await print(record, "inspection-read-both", { units: "both" })).text;
    expect(mm).toContain("Leg on the first plate 6.2 mm Gauge 2, no. F-2 0.1 mm");
    expect(mm).toContain("Depth of mark 1 0.4 mm");
    expect(inches).toContain("Leg on the first plate 0.244 in Gauge 2, no. F-2 0.004 in");
    expect(both).toContain("Leg on the first plate 6.2 mm (0.244 in)");
    for (const text of [mm, inches, both]) {
      expect(text).not.toMatch(/leg-1|weld-length/);
      expect(text).not.toMatch(/(Table \d+), [^;]{1,12}; \1,/);
    }
    const figures = (text: string) =>
      text.slice(text.indexOf("Viewing conditions"), text.indexOf("Result Clause Source"));
    expect(figures(mm)).not.toMatch(/\d in\b/);
    expect(figures(inches).replaceAll("20 mm", "")).not.toMatch(/\d mm\b/);
  });

  it("never leaves one or two rows of a clause table at a foot or on the next page", async () => {
    const { content } = soundBead();
    const looks: number[] = [];
    for (let lines = 0; lines < inDepth(2, 24); lines += 1) {
      const note = Array.from({ length: lines * 3 }, (_, i) => `Line ${i + 1}.`).join("\n");
      const bead = { ...soundBead(), content: { ...content, judgement: { ...content.judgement } } };
      const record = recordOf({ draft: { remarks: note }, beads: [bead] });
      const { pages } = await print(record, `inspection-clauses-${lines}`);
      const rows = pages.map(
        (page) => page.items.filter(({ text, x }) => x < 45 && text.trim() === "Met").length,
      );
      looks.push(rows.filter((count) => count > 0).length);
      for (const count of rows) expect([1, 2]).not.toContain(count);
    }
    expect(Math.max(...looks)).toBeGreaterThan(0);
  });

  it("holds its signature on the first page whatever was written, and counts welds that it cannot list there", async () => {
    const long = (length: number) => "a long word or two ".repeat(70).slice(0, length).trim();
    const welds = Array.from({ length: 60 }, (_, i) => ({ ...job.welds[0]!, id: `w${i}`, number: `W${i}` }));
    const looked = welds.map(({ id }) => ({ weldId: id, seen: null, seenNote: "" }));
    const title = {
      title: long(120),
      maker: long(120),
      customer: long(120),
      contract: long(80),
      procedure: long(80),
    };
    const record = recordOf({
      job: { ...title, welds },
      draft: { welds: looked, examiningBody: long(120) },
      beads: [],
    });
    const ranWelds = welds.map(({ id }) => id);
    const again = { ...signature, revision: 2, reason: long(1000), previousDigest: sha(7), ranWelds };
    const { pages } = await print(sealRecord(record, record, again).record, "inspection-long");
    const first = pages[0]?.text ?? "";
    for (const words of ["60 welds were looked at", "Open: 60 (W0, W1", "Signer:", digest, "Revision 2."])
      expect(first).toContain(words);
    expect(first).toContain("W11 and 48 more.");
  });

  it("sets what was asked of each weld against what was seen, and says how many points are open", async () => {
    const sound = { ...soundBead(), photos: beadOf(1).photos };
    const photos = beadOf(1, {}, []).content.photos;
    const bead = { ...sound, content: { ...sound.content, photos } };
    const accepted = recordOf({ beads: [bead] });
    const done = (await print(accepted, "inspection-checked")).text;
    expect(accepted.result).toBe("accepted");
    expect(done).toContain("Checklist of weld W1: all that was asked is there What Asked Seen Stands");
    for (const words of [
      "Extent 100 %, that is 300 mm 100 %, that is 300 mm done",
      "Length 300 mm Length of the weld 300 mm done",
      "Criteria ISO 5817 level C, 2014 bead 5 accepted done",
      "Gauges ticked, and in calibration on the day Gauge 2, no. F-2 done",
      "Certificate held on the day certificate VT-204, level 2, valid until 2027-05-01 done",
    ])
      expect(done).toContain(words);
    const listed = await print(accepted, "inspection-checked");
    const on = listed.pages.filter((page) => /ticked, and in calibration|Extent 100 %/.test(page.text));
    expect(on).toHaveLength(1);
    const short = { seen: { kind: "percent" as const, percent: 20 }, seenNote: "", weldId: "w1" };
    const open = (await print(recordOf({ draft: { welds: [short] }, beads: [bead] }), "inspection-fifth"))
      .text;
    expect(open).toContain("Checklist of weld W1: 1 open");
    expect(open).toContain("Extent 100 %, that is 300 mm 20 %, that is 60 mm open");
  });

  it("says nothing of its own beside a result that was signed when less was compared", async () => {
    const older = readFileSync(path.join(root, "tests/fixtures/older/signed-record-1.txt"), "utf8");
    const { text } = await print(readRecord(older), "inspection-older");
    const list = text.slice(text.indexOf("Checklist of weld"));
    expect(list).toContain("Signed when less of this was compared");
    expect(list).not.toMatch(/Checklist of weld \S+: (all|\d+ open)/);
    expect(list).not.toMatch(/ done\b/);
  });

  it("prints an address only where others reach it", async () => {
    const recordUrl = "https://toeline.shop.example/inspections/i1/revisions/1";
    const { text } = await print(signed(1), "inspection-address", { recordUrl });
    expect(text).toContain(`To verify: ${recordUrl}`);
    expect((await print(signed(1), "inspection-1")).text).toContain(
      "No address that others reach is set up here",
    );
  });

  it("is the same bytes for the same record", async () => {
    const one = await print(signed(1), "inspection-1");
    const two = await printAnew(signed(1), "inspection-1");
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
  });
});
