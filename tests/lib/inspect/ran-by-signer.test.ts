import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { JobContentSchema, ranBySigner, weldNumbers, weldsRunBy, type SignedRecord } from "@/lib/inspect";
import { readRecord, sealRecord } from "@/lib/inspect/make-record";
import { recordOf, signature } from "./build";

const { signer } = signature;
/** Four welds, all looked at but the last: the signer's by person, by mark, and another's. */
const { welds } = JobContentSchema.parse({
  title: "Frame",
  welds: [
    { id: "a", number: "1", welderId: "pi" },
    { id: "b", number: "2", welderMark: "i - 03" },
    { id: "c", number: "3", welderId: "pw" },
    { id: "d", number: "4", welderId: "pi" },
  ],
});
const looked = ["a", "b", "c"].map((weldId) => ({ weldId, seen: null, seenNote: "" }));
const record: SignedRecord = recordOf({ job: { welds }, draft: { welds: looked }, beads: [] });

describe("the welds that whoever signs ran", () => {
  it("are those of the job that name them, by person or mark, or of which a bead is theirs, if they were looked at", () => {
    expect(weldsRunBy(record, signer)).toEqual(["a", "b"]);
    expect(weldsRunBy(record, signer, ["c", "d"])).toEqual(["a", "b", "c"]);
  });

  it("are none for somebody else, nor for whoever has no mark where a weld has none", () => {
    expect(weldsRunBy(record, { personId: "other", mark: "I-04" })).toEqual([]);
    const unsaid = recordOf({ job: { welds: [{ ...welds[1]!, welderMark: "" }] }, draft: { welds: looked } });
    for (const mark of [null, "", " "])
      for (const welderMarks of [{}, { b: "" }])
        expect(weldsRunBy({ ...unsaid, welderMarks }, { personId: "other", mark })).toEqual([]);
  });

  it("are said in the signed text's own words, or by what it names where it is older than the words", () => {
    const said = (ranWelds?: string[]) => {
      const sealed = sealRecord(record, null, { ...signature, ...(ranWelds ? { ranWelds } : {}) }).record;
      return ranBySigner(sealed, sealed.signature!);
    };
    expect(said(["c"])).toBe("Inspected by the welder: whoever signed ran weld 3.");
    expect(said()).toBe("Inspected by the welder: whoever signed ran welds 1, 2.");
    expect(said([])).toBeNull();
  });

  it("are counted where they are many: a signature has its place on one page", () => {
    const many = Array.from({ length: 42 }, (_, i) => ({ ...welds[0]!, id: `w${i}`, number: `${i + 1}` }));
    const all = recordOf({ job: { welds: many }, draft: { welds: [] } });
    const ids = many.map(({ id }) => id);
    expect(weldNumbers(all, ids)).toBe("welds 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12 and 30 more");
    expect(weldNumbers(all, ids.slice(0, 12))).toBe("welds 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12");
    expect(weldNumbers(all, ["w4"])).toBe("weld 5");
    expect(weldNumbers(all, ["elsewhere"])).toBeNull();
  });

  it("are no part of a text in which there are none", () => {
    expect(sealRecord(record, null, signature).text).not.toContain("ranWelds");
    const older = readRecord(
      readFileSync(new URL("../../fixtures/older/signed-record-1.txt", import.meta.url), "utf8"),
    );
    expect(ranBySigner(older, older.signature!)).toBeNull();
  });
});
