import { describe, expect, it } from "vitest";
import { plannedBead } from "@/lib/assess";
import { type ExchangeBead } from "@/lib/exchange";
import { archiveManifest, parseManifest, serialiseManifest } from "@/lib/exchange/archive-manifest";
import { serialiseBeadsFile } from "@/lib/exchange/beads-file";
import { base } from "../trials/simulated";
import { sampleBead } from "./bead";

const plain = sampleBead().bead;
const planned: ExchangeBead = { ...plain, content: { ...plain.content, ...plannedBead(base) } };
const dropped: ExchangeBead = {
  ...plain,
  content: { ...plain.content, judgement: { ...plain.content.judgement, planned: null } },
};
const digest = "a".repeat(64);
const version = (text: string): unknown => (JSON.parse(text) as { schemaVersion: unknown }).schemaVersion;

describe("a bead with a plan beside its set-up on its way out", () => {
  it("says so by its version: an older reader would leave the plan out without a word", () => {
    expect(version(serialiseBeadsFile([plain, planned]))).toBe(4);
    expect(version(serialiseManifest(archiveManifest([plain, planned], digest)))).toBe(8);
    expect(version(serialiseBeadsFile([plain]))).toBe(1);
    // A plan that was dropped is none.
    expect(version(serialiseBeadsFile([dropped]))).toBe(1);
    expect(version(serialiseManifest(archiveManifest([dropped], digest)))).toBe(1);
  });

  it("comes back whole", () => {
    const read = parseManifest(serialiseManifest(archiveManifest([planned], digest)));
    expect(read.ok && read.value.beads[0]).toEqual(planned);
  });
});
