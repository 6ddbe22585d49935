import { expect, test } from "vitest";
import { electrodeClass, sprayTransitionAmps, tungstenAmps } from "@/lib/trade";

/** From memory: usual table of tungsten currents in argon; 1/16 in 70 to 150 A, 3/32 in 150 to 250 A electrode negative. */
test("tungsten by size and polarity", () => {
  expect(tungstenAmps(1.6, "DCEN")).toMatchObject({ low: 70, high: 150 });
  expect(tungstenAmps(2.4, "DCEN")).toMatchObject({ low: 150, high: 250 });
  expect(tungstenAmps(2.4, "DCEP")?.high).toBeLessThan(tungstenAmps(2.4, "AC")!.low);
  expect(tungstenAmps(1, "DCEP")).toBeNull();
  expect(tungstenAmps(7, "DCEN")).toBeNull();
});

/** From memory: usual table of transition currents in 98 % argon: 165 A at .035 in, 220 A at .045 in. */
test("spray begins at a current that grows with the wire, and not in every gas", () => {
  const s6 = electrodeClass("ER70S-6", "GMAW")!;
  const at = (mm: number, gas: Parameters<typeof sprayTransitionAmps>[2]) => sprayTransitionAmps(s6, mm, gas);
  for (const [mm, amps] of [
    [0.9, 165],
    [1.2, 220],
  ] as const) {
    const span = at(mm, "98Ar-2O2")!;
    expect(span.low).toBeLessThan(amps);
    expect(span.high).toBeGreaterThan(amps);
  }
  expect(at(0.9, "CO2")).toBeNull();
  expect(at(0.9, "75Ar-25CO2")).toBeNull();
  expect(at(0.9, null)).toBeNull();
  expect(sprayTransitionAmps(electrodeClass("E71T-1C")!, 1.2, "CO2")).toBeNull();
});
