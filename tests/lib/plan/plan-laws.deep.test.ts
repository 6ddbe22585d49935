import { expect, it } from "vitest";
import { grid } from "./grid";
import { complaints, planner, stepComplaints } from "./laws";
import type { Plan } from "@/lib/plan";

it("every 151st ask of the grid keeps the laws", { timeout: 1_200_000 }, () => {
  const wrong: string[] = [];
  let plans = 0;
  for (const ask of grid(151)) {
    const planned = planner(ask);
    if (!planned.ok) continue;
    plans += 1;
    wrong.push(...complaints(planned.value, ask).map((text) => `${text} ${JSON.stringify(ask)}`));
  }
  expect(wrong).toEqual([]);
  expect(plans).toBeGreaterThan(8000);
});

it("no neighbours of every 30 011th ask jump", { timeout: 1_200_000 }, () => {
  const wrong: string[] = [];
  let steps = 0;
  for (const ask of grid(30_011, 7)) {
    let before: Plan | null = null;
    for (let tenths = 8; tenths <= 130; tenths += 1) {
      const planned = planner({ ...ask, thicknessMm: tenths / 10 });
      const now = planned.ok ? planned.value : null;
      if (before && now) {
        steps += 1;
        wrong.push(...stepComplaints(before, now));
      }
      before = now;
    }
  }
  expect(wrong).toEqual([]);
  expect(steps).toBeGreaterThan(5000);
});
