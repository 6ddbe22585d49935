import { describe, expect, it } from "vitest";
import { BeadsFileSchema, type ExchangeBead } from "@/lib/exchange";
import { archiveManifest, parseManifest, serialiseManifest } from "@/lib/exchange/archive-manifest";
import { serialiseBeadsFile } from "@/lib/exchange/beads-file";
import { textHasStudy } from "@/lib/inspect";
import { newMark } from "@/lib/marks";
import { sampleBead } from "./bead";

const digest = "a".repeat(64);
const version = (text: string): unknown => (JSON.parse(text) as { schemaVersion: unknown }).schemaVersion;
const study = { on: "2026-11-20", u: 0.3, k: 2.45 };

/** The sample with one reading of the whole bead; `carried` is what it keeps of a study. */
function withReading(carried: object): ExchangeBead {
  const { bead } = sampleBead();
  const reading = {
    quantity: "leg-1",
    value: 6,
    instrument: "Gauge 2",
    resolution: 0.5,
    ...carried,
  } as const;
  const judgement = { ...bead.content.judgement, readings: [reading] };
  return { ...bead, content: { ...bead.content, judgement } };
}

describe("a reading with the study of its gauge on its way out", () => {
  it("says so by its version: an older reader would leave the study out without a word", () => {
    const [plain, studied] = [withReading({}), withReading({ study })];
    expect(version(serialiseBeadsFile([studied]))).toBe(5);
    expect(version(serialiseBeadsFile([plain]))).toBeLessThan(5);
    expect(version(serialiseManifest(archiveManifest([studied], digest)))).toBe(9);
    expect(archiveManifest([plain], digest).schemaVersion).toBeLessThan(9);
  });

  it("comes back whole", () => {
    const studied = withReading({ study });
    expect(BeadsFileSchema.parse(JSON.parse(serialiseBeadsFile([studied]))).beads).toEqual([studied]);
    const read = parseManifest(serialiseManifest(archiveManifest([studied], digest)));
    expect(read.ok && read.value.beads[0]).toEqual(studied);
  });

  it("is found in a signed text, at the bead and at a mark, and nowhere else", () => {
    const mark = newMark("m", "undercut", { kind: "point", at: { x: 5, y: 5 }, radius: 2 });
    const text = (readings: object[], gauge: object[]) =>
      JSON.stringify({
        beads: [{ judgement: { readings }, photos: [{ drawing: { marks: [{ ...mark, gauge }] } }] }],
      });
    expect(
      [text([{ study }], []), text([{}], [{ study }]), text([{}], [{}]), "no text"].map(textHasStudy),
    ).toEqual([true, true, false, false]);
  });
});
