import { describe, expect, it } from "vitest";
import { shortOf } from "@/lib/inspect/asked-size";
import { job, recordOf, soundBead } from "./build";

const weld = { ...job.welds[0]!, asked: { kind: "percent" as const, percent: 100 } };
const [bead] = recordOf({ beads: [soundBead()] }).beads;

/** The weld asked to be so long, its only bead read with a rule of such a step, all mm. */
function short(lengthMm: number, value: number, resolution: number, study?: { k: number; u: number }) {
  const reading = { quantity: "weld-length" as const, value, instrument: "Steel rule", resolution };
  const readings = [study ? { ...reading, study: { id: "s1", madeOn: "2026-11-01", ...study } } : reading];
  const judgement = { ...bead!.judgement, readings } as (typeof bead & object)["judgement"];
  return shortOf({ ...weld, lengthMm }, [{ judgement }]) !== null;
}

describe("a bead shorter than its weld is asked to be", () => {
  it("is so beyond one step of the rule, and one step below is not lost in turning inches into mm", () => {
    const IN = 25.4;
    for (let parts = 64; parts < 64 * 24; parts += 7)
      for (const step of [1 / 64, 1 / 32, 1 / 16, 1 / 8]) {
        const asked = (parts / 64) * IN;
        const off = (by: number) => short(asked, (parts / 64 - by) * IN, step * IN);
        expect([off(0), off(step), off(step + 1 / 64)], `${parts}/64 in by ${step}`).toEqual([
          false,
          false,
          true,
        ]);
      }
    for (let tenths = 100; tenths < 4000; tenths += 13)
      for (const step of [0.1, 0.5, 1]) {
        const off = (by: number) => short(tenths / 10, Number((tenths / 10 - by).toFixed(1)), step);
        expect([off(step), off(step + 0.1)], `${tenths}/10 mm by ${step}`).toEqual([false, true]);
      }
  });

  it("is not excused by a study that found the rule wide", () => {
    expect(short(300, 298, 1)).toBe(true);
    expect(short(300, 298, 1, { k: 2, u: 3 })).toBe(true);
  });
});
