import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  acceptedBeyond,
  InspectionDraftSchema,
  JobContentSchema,
  recordSections,
  wholeWeld,
} from "@/lib/inspect";
import { readRecord } from "@/lib/inspect/make-record";
import { readExtentText } from "@/lib/inspect/extent";

const percent = (value: number) => ({ kind: "percent", percent: value });
const length = (lengthMm: number) => ({ kind: "length", lengthMm });

describe("an extent said in words", () => {
  // 1 in = 25.4 mm exactly (international yard and pound agreement of 1959).
  it.each([
    ["100 %", percent(100)],
    ["20%", percent(20)],
    ["33,5 percent", percent(33.5)],
    ["0 %", percent(0)],
    ["300 mm", length(300)],
    ["300MM", length(300)],
    ["1.5 m", length(1500)],
    ["12 in", length(12 * 25.4)],
    ['2 "', length(2 * 25.4)],
  ])("%s is plainly a number", (text, extent) => {
    expect(readExtentText(text)).toEqual(extent);
  });

  it.each([
    "",
    "300",
    "both ends",
    "100 % (RT)",
    "60-80 %",
    "about 50 %",
    "120 %",
    "-5 %",
    "1,500 mm",
    "1.500 m",
  ])("“%s” is not", (text) => {
    expect(readExtentText(text)).toBeNull();
  });
});

describe("the older shape", () => {
  const oldJob = (quantity: string) => ({
    schemaVersion: 1,
    title: "Bracket run 4",
    welds: [{ id: "w1", number: "W1", quantity }],
  });
  const weldOf = (quantity: string) => JobContentSchema.parse(oldJob(quantity)).welds[0];
  const lookOf = (quantity: string) =>
    InspectionDraftSchema.parse({ schemaVersion: 1, welds: [{ weldId: "w1", quantity }] }).welds[0];

  it("of a job keeps a number, and what is none as a note beside “not known”", () => {
    expect(weldOf("100 %")).toMatchObject({ asked: percent(100), askedNote: "", lengthMm: null });
    expect(weldOf("both ends")).toMatchObject({ asked: null, askedNote: "both ends" });
    expect(weldOf("")).toMatchObject({ asked: null, askedNote: "" });
    // Nothing of it asked is no number that could be met.
    expect(weldOf("0 %")).toMatchObject({ asked: null, askedNote: "0 %" });
  });

  it("of an inspection likewise, and nothing seen is an answer", () => {
    expect(lookOf("300 mm")).toEqual({ weldId: "w1", seen: length(300), seenNote: "" });
    expect(lookOf("as far as the gusset")).toMatchObject({ seen: null, seenNote: "as far as the gusset" });
    expect(lookOf("0 %")).toMatchObject({ seen: percent(0) });
  });

  it("read twice is read once; the present shape goes through untouched, a later one is refused", () => {
    const job = JobContentSchema.parse(oldJob("both ends"));
    expect(JobContentSchema.parse(job)).toEqual(job);
    expect(job.schemaVersion).toBe(2);
    expect(JobContentSchema.safeParse({ ...job, schemaVersion: 3 }).success).toBe(false);
    for (const junk of [null, 4, [], { schemaVersion: 1, welds: 7 }, { schemaVersion: 1, welds: [null] }])
      expect(InspectionDraftSchema.safeParse(junk).success && JobContentSchema.safeParse(junk).success).toBe(
        false,
      );
  });

  it("new welds are asked whole, and nothing of them is seen yet", () => {
    expect(JobContentSchema.parse({ title: "x", welds: [{ id: "w", number: "W" }] }).welds[0]?.asked).toEqual(
      wholeWeld,
    );
    expect(InspectionDraftSchema.parse({ welds: [{ weldId: "w" }] }).welds[0]?.seen).toBeNull();
  });

  // Signed by version 1 of this record: 100 % asked, 20 % written as seen, "Accepted".
  it("of a signed record says what was signed", () => {
    const text = readFileSync(new URL("../../fixtures/older/signed-record-1.txt", import.meta.url), "utf8");
    const record = readRecord(text);
    expect(record.result).toBe("accepted");
    expect(record.weldResults).toEqual([{ weldId: "w1", result: "accepted" }]);
    // What today's rules would say is said beside it.
    expect(acceptedBeyond(record)).toEqual([
      "Weld W1: 100 % was asked and 20 % was seen; 80 % of the weld is still to be looked at.",
    ]);
    const rows = recordSections(record).find(({ title }) => title === "Weld W1")?.rows ?? [];
    expect(rows).toContainEqual({ label: "To inspect", value: "100 %" });
    expect(rows).toContainEqual({ label: "Seen", value: "20 %" });
  });
});
