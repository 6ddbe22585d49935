import { describe, expect, it } from "vitest";
import { BeadsFileSchema, markTable, type ExchangeBead } from "@/lib/exchange";
import { beadAnnotations } from "@/lib/exchange/bead-annotations";
import { serialiseBeadsFile } from "@/lib/exchange/beads-file";
import { archiveManifest, parseManifest, serialiseManifest } from "@/lib/exchange/archive-manifest";
import { assessBead, measurePhotos } from "@/lib/assess";
import { emptyDrawing, newMark } from "@/lib/marks";
import { sheetDocument } from "@/lib/report";
import { metric } from "@/lib/units";
import { sampleBead } from "./bead";

const digest = "a".repeat(64);
const version = (text: string): unknown => (JSON.parse(text) as { schemaVersion: unknown }).schemaVersion;

/** The sample with one photo on which a ring lies round a patch of pores. */
function withPores(aboutCount: number | null): ExchangeBead {
  const plain = sampleBead().bead;
  const mark = newMark("m", "surface-porosity", { kind: "point", at: { x: 500, y: 500 }, radius: 200 });
  const scale = { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 1000, y: 0 }, lengthMm: 50 } as const;
  const marks = [aboutCount === null ? mark : { ...mark, patterns: ["scattered" as const], aboutCount }];
  return {
    ...plain,
    photos: plain.photos.map((photo) => ({ ...photo, widthPx: 2000, heightPx: 1500 })),
    content: {
      ...plain.content,
      photos: plain.content.photos.map((photo) => ({
        ...photo,
        role: "face" as const,
        drawing: { ...emptyDrawing, scale, marks },
      })),
    },
  };
}

describe("a bead with a count by eye on its way out", () => {
  const counted = withPores(20);

  it("says so by its version: an older reader would leave the count out without a word", () => {
    expect(version(serialiseBeadsFile([withPores(null)]))).toBe(1);
    expect(version(serialiseBeadsFile([counted]))).toBe(3);
    expect(version(serialiseManifest(archiveManifest([counted], digest)))).toBe(7);
    expect(version(serialiseManifest(archiveManifest([withPores(null)], digest)))).toBe(1);
  });

  it("comes back whole", () => {
    expect(BeadsFileSchema.parse(JSON.parse(serialiseBeadsFile([counted]))).beads).toEqual([counted]);
    const read = parseManifest(serialiseManifest(archiveManifest([counted], digest)));
    expect(read.ok && read.value.beads[0]).toEqual(counted);
  });

  it("is in the table of marks, in the annotations and on the sheet", () => {
    const table = markTable([{ ...counted, measured: measurePhotos(counted.content, counted.photos) }]);
    expect(table.columns.at(-1)).toBe("About how many, by eye");
    expect(table.rows[0]?.at(-1)).toBe(20);
    const said = JSON.stringify(beadAnnotations(counted, "urn:x"));
    expect(said).toContain("about how many: 20");
    const sheet = sheetDocument(assessBead(counted as Parameters<typeof assessBead>[0]) as never, metric);
    expect(sheet.marks[0]?.size).toMatch(/^about 20 by eye; patch ⌀ 20 ± /);
    expect(sheet.photos[0]?.labels["m"]).toMatch(/^Surface porosity, about 20, 20 ± /);
  });
});
