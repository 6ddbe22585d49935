import { expect, it } from "vitest";
import { wave, waveReach } from "./rendered/wave";

const line = (of: (x: number) => number): Float32Array => Float32Array.from({ length: 400 }, (_, x) => of(x));
const sizeAt = (found: ReturnType<typeof wave>, x: number): number => Math.hypot(found.re[x]!, found.im[x]!);

it("a wave answers its own wavelength most, a shift by its phase alone, even light and its margins not at all", () => {
  const of = (shift: number) => line((x) => Math.cos((2 * Math.PI * (x - shift)) / 24));
  // Divided by the root of the wavelength: unit energy lets a longer wave gather more of the same swing.
  const answer = (columns: number): number => sizeAt(wave(of(0), columns), 200) / Math.sqrt(columns);
  for (const other of [12, 16, 36, 48]) expect(answer(24)).toBeGreaterThan(1.2 * answer(other));
  const [here, later] = [wave(of(0), 24), wave(of(6), 24)];
  expect(sizeAt(later, 200)).toBeCloseTo(sizeAt(here, 200), 1);
  const turned = Math.atan2(here.im[200]!, here.re[200]!) - Math.atan2(later.im[200]!, later.re[200]!);
  // A quarter of the wave is a quarter of a turn.
  expect(Math.abs(Math.cos(turned))).toBeLessThan(0.05);
  const even = wave(
    line(() => 0.7),
    24,
  );
  expect(Math.max(...even.re.map(Math.abs), ...even.im.map(Math.abs))).toBeLessThan(1e-5);
  expect(here.re.slice(0, waveReach(24)).every((v) => v === 0)).toBe(true);
});
