import { describe, expect, it } from "vitest";
import { BeadsFileSchema, type ExchangeBead } from "@/lib/exchange";
import { serialiseBeadsFile } from "@/lib/exchange/beads-file";
import { archiveManifest, parseManifest, serialiseManifest } from "@/lib/exchange/archive-manifest";
import { meltedFillet } from "../assess/section-bead";
import { sampleBead } from "./bead";

const plain = sampleBead().bead;
const withSection: ExchangeBead = {
  ...plain,
  content: {
    ...plain.content,
    photos: plain.content.photos.map((photo, i) => (i === 0 ? { ...photo, section: meltedFillet } : photo)),
  },
};
const judged: ExchangeBead = {
  ...plain,
  content: {
    ...plain.content,
    judgement: { ...plain.content.judgement, sectionSetId: "aws-d1-1-macro-fillet" },
  },
};
const digest = "a".repeat(64);
const version = (text: string): unknown => (JSON.parse(text) as { schemaVersion: unknown }).schemaVersion;

describe("a bead with a section on its way out", () => {
  it("says so by its version: an older reader would leave the section out without a word", () => {
    expect(version(serialiseBeadsFile([plain]))).toBe(1);
    for (const bead of [withSection, judged]) {
      expect(version(serialiseBeadsFile([plain, bead]))).toBe(2);
      expect(version(serialiseManifest(archiveManifest([plain, bead], digest)))).toBe(5);
    }
    expect(version(serialiseManifest(archiveManifest([plain], digest)))).toBe(1);
  });

  it("comes back whole", () => {
    const { beads } = BeadsFileSchema.parse(JSON.parse(serialiseBeadsFile([withSection])));
    expect(beads).toEqual([withSection]);
    const read = parseManifest(serialiseManifest(archiveManifest([withSection], digest)));
    expect(read.ok && read.value.beads[0]).toEqual(withSection);
  });
});
