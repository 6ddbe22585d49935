import { describe, expect, it } from "vitest";
import { planRun, PlanAskSchema, type PlanAsk } from "@/lib/plan";
import { runSheet } from "@/lib/report";
import { travelDrawing, workDrawing } from "@/lib/report/gun-drawings";
import { inch, metric } from "@/lib/units";

const ask = (part: Partial<PlanAsk>): PlanAsk =>
  PlanAskSchema.parse({
    electrodeClass: "E71T-11",
    electrodeDiameterMm: 0.9,
    joint: "tee",
    position: "horizontal",
    thicknessMm: 5,
    inputPower: "120V",
    ...part,
  });
const sheetOf = (part: Partial<PlanAsk>, units = metric) => {
  const one = ask(part);
  const planned = planRun(one);
  if (!planned.ok) throw new Error("no plan");
  return { plan: planned.value, sheet: runSheet(planned.value, one, units) };
};

describe("the run sheet", () => {
  it("says every knob of the plan, in both units where they differ", () => {
    const { plan, sheet } = sheetOf({});
    expect(sheet.dials.map(({ label }) => label)).toEqual([
      "Wire feed",
      "Voltage",
      "Tip to work",
      "Travel angle",
      "Work angle",
      "Travel speed",
    ]);
    expect(sheet.dials[0]!.values).toEqual(["7.1 m/min", "280 in/min"]);
    expect(sheet.dials[1]!.values).toHaveLength(1);
    expect(sheet.limits[0]).toContain("This socket gives out");
    expect(sheet.fixed.find(({ label }) => label === "Polarity")?.value).toContain("DCEN");
    expect(plan.setup.amps).toBeNull();
  });

  it("gives the pace as seconds for each 25 mm", () => {
    const { plan, sheet } = sheetOf({});
    const seconds = 1500 / plan.setup.travelSpeedMmPerMin!;
    expect(sheet.pace.secondsExactly).toBeCloseTo(seconds, 9);
    expect(sheet.pace.seconds).toBe(`${seconds.toFixed(1)} s`);
  });

  it("and for each inch where that is the measure: 25.4 mm at the plan's own travel", () => {
    const { plan, sheet } = sheetOf({}, inch);
    expect(sheet.pace.length).toBe("each inch");
    expect(sheet.pace.secondsExactly).toBeCloseTo((25.4 * 60) / plan.setup.travelSpeedMmPerMin!, 9);
  });

  it("tells cautions, and what the figures are counted for", () => {
    const { sheet } = sheetOf({ weldLengthMm: 300 });
    expect(sheet.cautions.some((line) => line.includes("Acceptance belongs"))).toBe(true);
    expect(sheet.gives[0]).toMatchObject({ label: "For a weld of", value: "300 mm" });
    expect(sheetOf({}).sheet.gives[0]!.value).toBe("1 m");
  });
});

describe("a gun drawn", () => {
  const gunOf = (strokes: ReturnType<typeof travelDrawing>["strokes"]) =>
    strokes.find(({ kind }) => kind === "gun")!.points;
  /** Off straight up, to the right, degrees. */
  const leanOf = (points: ReturnType<typeof gunOf>) => {
    const [foot, top] = [points[0]!, points[1]!];
    return (Math.atan2(top[0] - foot[0], foot[1] - top[1]) * 180) / Math.PI;
  };

  it.each([0, 5, 15, 30, 45])(
    "leans %s degrees off square, with the travel when dragged, against it when pushed",
    (degrees) => {
      expect(leanOf(gunOf(travelDrawing(degrees, "drag").strokes))).toBeCloseTo(degrees, 9);
      expect(leanOf(gunOf(travelDrawing(degrees, "push").strokes))).toBeCloseTo(-degrees, 9);
    },
  );

  it("splits a T-joint at 45 and stands square on a plate at 90", () => {
    expect(leanOf(gunOf(workDrawing(45, true).strokes))).toBeCloseTo(45, 9);
    expect(leanOf(gunOf(workDrawing(90, false).strokes))).toBeCloseTo(0, 9);
  });

  it("stays within its square", () => {
    for (const drawing of [
      travelDrawing(45, "drag"),
      travelDrawing(45, "push"),
      workDrawing(35, true),
      workDrawing(100, false),
    ])
      for (const [x, y] of drawing.strokes.flatMap(({ points }) => [...points])) {
        expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
        expect(Math.max(x, y)).toBeLessThanOrEqual(100);
      }
  });
});
