import { describe, expect, it } from "vitest";
import { documentsOf, sourcesOf, strongest } from "@/lib/diagnose/witness";

const MOST = "job-knowledge-42-porosity"; // an institute
const MIDDLE = "mig-handbook"; // trade
const LEAST = "apprenticeship-notes"; // informal

/** Laws of our own; no published source. */
describe("witnesses of a row", () => {
  it("put who names the cause first before the others, and count memory as no document", () => {
    expect(documentsOf([LEAST, "memory", `${MIDDLE} first`, MOST])).toEqual([MIDDLE, LEAST, MOST]);
  });

  it("become sources, the most trusted first, lowered where part of the row is from memory", () => {
    const seen = sourcesOf([LEAST, `${MIDDLE} first`, MOST]);
    expect(seen.map(({ document }) => document)).toEqual([
      "Job Knowledge 42: porosity (The Welding Institute)",
      "MIG Handbook",
      "Apprenticeship study notes: weld faults, wire-feed set-up and troubleshooting, gases, wires",
    ]);
    expect(seen.map(({ confidence }) => confidence)).toEqual(["seen", "seen", "seen"]);
    expect(sourcesOf([LEAST, "memory"])[0]?.confidence).toBe("seen-part");
  });

  it("rest on memory alone where no document is named", () => {
    const memory = { document: "trade knowledge, no text read", confidence: "memory" };
    expect([sourcesOf([]), sourcesOf(["memory"]), [strongest()]]).toEqual([[memory], [memory], [memory]]);
    expect(strongest("practice-questions", MIDDLE).document).toBe("MIG Handbook");
  });
});
