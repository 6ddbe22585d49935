import { expect, it } from "vitest";
import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { profileFigures, widthRows } from "@/lib/report";
import { beadProfile } from "@/lib/trace/profile";
import { emptyRunSetup } from "@/lib/setup";
import { metric } from "@/lib/units";

/** Ten pixels a millimetre; a bead 8 mm wide. */
const scale = calibrate(
  { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 1000, y: 0 }, lengthMm: 100 },
  { ...defaultMeasureOptions, photo: null },
);
const stations = Array.from({ length: 161 }, (_, i) => {
  const toe = (y: number) => ({ at: { x: 100 + 5 * i, y }, sigmaPx: 0.5, sure: 1, spread: 0 });
  return { alongPx: 5 * i, upper: toe(460), lower: toe(540), widthPx: 80, end: i < 10 || i > 150 };
});
const profile = beadProfile(scale.ok ? scale.value : (null as never), { stations })!;

it("the figures are the profile's own, rounded to thousandths", () => {
  const figures = profileFigures(profile);
  expect(figures.meanWidthMm).toBeCloseTo(8, 3);
  expect(figures.meanWidthUMm).toBeCloseTo(profile.mean.expandedUncertainty, 3);
  expect(figures.worst25Mm).toBeCloseTo(profile.worst25!.differenceMm, 3);
  expect(figures.offStraightMm).toBe(0);
  expect(figures.sureShare).toBe(1);
  const short = profileFigures({ ...profile, worst25: null });
  expect([short.worst25Mm, short.worst25DoubtMm]).toEqual([null, null]);
});

it("in words say the travel that such a width takes beside what was recorded", () => {
  const run = {
    ...emptyRunSetup,
    process: "FCAW-G" as const,
    joint: "tee" as const,
    electrodeClass: "E71T-1C",
    electrodeDiameterMm: 1.2,
    wireFeedMPerMin: 9,
  };
  const said = (setup: typeof run & { travelSpeedMmPerMin: number | null }) =>
    Object.fromEntries(widthRows(profile, metric, setup).map(({ label, value }) => [label, value]));
  const travel = said(run)["Travel for such a width"]!;
  expect(travel).toMatch(/^\d+ to \d+ mm\/min$/);
  const [low, high] = travel.match(/\d+/g)!.map(Number) as [number, number];
  const at = (travelSpeedMmPerMin: number) => Object.keys(said({ ...run, travelSpeedMmPerMin }));
  expect(at((low + high) / 2)).toContain("Travel recorded: fits");
  expect(at(2 * high)).toContain("Travel recorded: does not fit");
  expect(at(low / 2)).toContain("Travel recorded: does not fit");
  expect(said({ ...run, joint: "butt" as never })["Travel for such a width"]).toBeUndefined();
});
