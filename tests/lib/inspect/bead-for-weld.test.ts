import { expect, test } from "vitest";
import { emptyBeadJudgement } from "@/lib/assess";
import { beadForWeld, JobContentSchema } from "@/lib/inspect";
import { emptyRunSetup } from "@/lib/setup";

const content = JobContentSchema.parse({
  title: "Brackets",
  process: "FCAW-S",
  criteriaId: "iso-5817-c",
  parts: [
    { id: "p1", name: "Left", thicknessMm: 6 },
    { id: "p2", name: "Right" },
  ],
  welds: [
    { id: "w1", number: "W1", partId: "p1", joint: "tee", position: "horizontal" },
    { id: "w2", number: "W2", partId: "p2" },
    { id: "w3", number: "W3", partId: "gone", joint: "lap" },
  ],
});
const bead = (place: number) => beadForWeld({ number: 12, content }, content.welds[place]!);

test("a bead begins with what its job says", () => {
  expect(bead(0)).toEqual({
    title: "Job 12, weld W1",
    judgement: { ...emptyBeadJudgement, criteriaId: "iso-5817-c" },
    setup: { ...emptyRunSetup, process: "FCAW-S", joint: "tee", position: "horizontal", thicknessMm: 6 },
  });
});

test("and knows nothing that the job does not say", () => {
  expect(bead(1).setup).toEqual({ ...emptyRunSetup, process: "FCAW-S" });
  expect(bead(2).setup).toEqual({ ...emptyRunSetup, process: "FCAW-S", joint: "lap" });
});
