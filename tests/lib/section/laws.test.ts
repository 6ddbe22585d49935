import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import {
  measureSection,
  sectionFigureIds,
  sectionFigures,
  type SectionDrawing,
  type SectionFigureId,
} from "@/lib/section";
import { calibrate } from "@/lib/measure";
import { type SectionFigures } from "@/lib/section/types";
import { macroNames, macroTruthOf, type MacroName } from "@/demo-images";
import { chance } from "../measure/camera";
import { exact, scale } from "./known-shapes";
import { drawSection } from "./rendered/study";
import { inDepth } from "../../setup/in-depth";

/** Sections of every joint and fault, drawn without error on a photo looked at square. */
const drawings = new Map<string, SectionDrawing>();
function drawn(name: MacroName, seed: number): SectionDrawing {
  const key = `${name} ${seed}`;
  const found = drawings.get(key);
  if (found !== undefined) return found;
  const truth = macroTruthOf({ scenario: name, seed, megapixels: 2, tiltDeg: 0, rollDeg: 0, distortion: 0 });
  const made = drawSection(truth, (at) => at, chance(seed));
  drawings.set(key, made);
  return made;
}

const figuresOf = (drawing: SectionDrawing, by: Scale = scale): SectionFigures =>
  measureSection(drawing, calibrate(by, exact)).figures;

function moved(drawing: SectionDrawing, move: (point: Point) => Point): SectionDrawing {
  return {
    ...drawing,
    outline: drawing.outline!.map(move),
    edges: drawing.edges.map((edge) => ({ ...edge, points: edge.points.map(move) })),
    root: drawing.root && move(drawing.root),
  };
}

const swappedRole: Partial<Record<string, SectionDrawing["edges"][number]["role"]>> = {
  "plate-1": "plate-2",
  "plate-2": "plate-1",
  "groove-1": "groove-2",
  "groove-2": "groove-1",
};
const swapped = (drawing: SectionDrawing): SectionDrawing => ({
  ...drawing,
  edges: drawing.edges.map((edge) => ({ ...edge, role: swappedRole[edge.role] ?? edge.role })),
});
const swappedId = (id: SectionFigureId): SectionFigureId =>
  ({
    "leg-1": "leg-2" as const,
    "leg-2": "leg-1" as const,
    "fusion-1-greatest": "fusion-2-greatest" as const,
    "fusion-2-greatest": "fusion-1-greatest" as const,
    "fusion-1-least": "fusion-2-least" as const,
    "fusion-2-least": "fusion-1-least" as const,
  })[id as "leg-1"] ?? id;

/** Every figure of the one is that of the other times what the law says; null stays null. */
function expectSame(
  before: SectionFigures,
  after: SectionFigures,
  factor: (id: SectionFigureId) => number = () => 1,
  to: (id: SectionFigureId) => SectionFigureId = (id) => id,
): void {
  for (const id of sectionFigureIds) {
    const [one, other] = [before[id], after[to(id)]];
    expect(other === null, id).toBe(one === null);
    if (one !== null && other !== null)
      expect(Math.abs(other.value - factor(id) * one.value), id).toBeLessThan(
        1e-6 * Math.max(1, Math.abs(factor(id) * one.value)),
      );
  }
}

const anySection = fc.record({
  name: fc.constantFrom(...macroNames),
  seed: fc.integer({ min: 1, max: 4 }),
});
const runs = { numRuns: inDepth(8, 60), seed: 5817 };

describe("the figures of a section", () => {
  it("do not change when the photo is turned or shifted", () => {
    fc.assert(
      fc.property(
        anySection,
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        fc.integer({ min: -500, max: 500 }),
        ({ name, seed }, turn, shift) => {
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          const move = ({ x, y }: Point): Point => ({
            x: c * x - s * y + shift,
            y: s * x + c * y - shift / 2,
          });
          expectSame(figuresOf(drawn(name, seed)), figuresOf(moved(drawn(name, seed), move)));
        },
      ),
      runs,
    );
  });

  it("do not change in the mirror, where left and right have their old names", () => {
    fc.assert(
      fc.property(anySection, ({ name, seed }) => {
        const mirror = moved(drawn(name, seed), ({ x, y }) => ({ ...{ x: 4000 - x }, y }));
        expectSame(figuresOf(drawn(name, seed)), figuresOf(mirror));
      }),
      runs,
    );
  });

  it("grow with the scale: lengths by k, areas by k squared, angles and shares not at all", () => {
    const power = { mm: 1, mm2: 2, deg: 0, ratio: 0 } as const;
    fc.assert(
      fc.property(anySection, fc.double({ min: 0.2, max: 5, noNaN: true }), ({ name, seed }, k) => {
        if (scale.kind !== "two-points") throw new Error(scale.kind);
        const larger = { ...scale, lengthMm: k * scale.lengthMm };
        const section = drawn(name, seed);
        expectSame(
          figuresOf(section),
          figuresOf(section, larger),
          (id) => k ** power[sectionFigures[id].unit],
        );
      }),
      runs,
    );
  });

  it("swap with the plates", () => {
    fc.assert(
      fc.property(anySection, ({ name, seed }) => {
        const section = drawn(name, seed);
        expectSame(figuresOf(section), figuresOf(swapped(section)), undefined, swappedId);
      }),
      runs,
    );
  });

  it("do not know where the outline was begun, nor which way round", () => {
    fc.assert(
      fc.property(anySection, fc.nat({ max: 100 }), fc.boolean(), ({ name, seed }, start, back) => {
        const section = drawn(name, seed);
        const ring = section.outline!;
        const turned = [...ring.slice(start % ring.length), ...ring.slice(0, start % ring.length)];
        const again = { ...section, outline: back ? turned.reverse() : turned };
        expectSame(figuresOf(section), figuresOf(again));
      }),
      runs,
    );
  });

  /** What must hold whatever the shape: a triangle inside the weld is no higher than its throat is long. */
  it("keep their order: inscribed triangle <= throat, least <= greatest, melted <= whole", () => {
    fc.assert(
      fc.property(anySection, ({ name, seed }) => {
        const of = figuresOf(drawn(name, seed));
        const value = (id: SectionFigureId): number => of[id]?.value ?? NaN;
        if (of.throat !== null) expect(value("nominal-throat")).toBeLessThanOrEqual(value("throat") + 1e-9);
        for (const side of [1, 2] as const)
          expect(value(`fusion-${side}-least`)).toBeLessThanOrEqual(value(`fusion-${side}-greatest`));
        expect(value("fused-parent-area")).toBeLessThan(value("weld-area"));
        expect(value("dilution")).toBeCloseTo(value("fused-parent-area") / value("weld-area"), 9);
      }),
      runs,
    );
  });

  it("each law would catch a fault: a figure that is off breaks it", () => {
    const before = figuresOf(drawn("section-tee-skew-legs", 1));
    const off = { ...before, throat: { ...before.throat!, value: before.throat!.value * 1.001 } };
    expect(() => expectSame(before, off)).toThrow();
    // Legs that do not swap with the plates, areas that grow like lengths, a figure that goes missing.
    expect(() => expectSame(before, before, undefined, swappedId)).toThrow();
    expect(() => expectSame(before, before, (id) => (id === "weld-area" ? 2 : 1))).toThrow();
    expect(() => expectSame(before, { ...before, convexity: null })).toThrow();
  });
});

/**
 * The generator works its sizes out from the dense curves by other means (nearest points, thin slices). Drawn without an
 * error, a section must give them back; what is left is what lies between picks a seventh of a millimetre apart.
 */
describe("a section drawn without an error", () => {
  it.each(macroNames.filter((_, i) => i % inDepth(3, 1) === 0))(
    "%s: gives the sizes it was made with",
    (name) => {
      for (const seed of inDepth([1], [1, 2, 3])) {
        const truth = macroTruthOf({
          scenario: name,
          seed,
          megapixels: 2,
          tiltDeg: 0,
          rollDeg: 0,
          distortion: 0,
        });
        const key = truth.scaleObject!.keyPoints;
        const by = 4000 / truth.widthPx;
        const [a, b] = [key[0]!, key.at(-1)!].map(({ px: [x, y] }) => ({ x: by * x, y: by * y }));
        const rule: Scale = {
          kind: "two-points",
          a: a!,
          b: b!,
          lengthMm: truth.scaleObject!.sizes["graduatedLengthMm"]!,
        };
        const section = drawSection(truth, (at) => at, chance(seed), 0.15);
        const figures = figuresOf(section, rule);
        for (const id of sectionFigureIds) {
          const size = truth.sizes[id];
          if (size === undefined) continue;
          const tolerance = sectionFigures[id].unit === "mm" ? 0.03 : Math.max(0.005 * size, 0.002);
          expect(Math.abs((figures[id]?.value ?? NaN) - size), `${name} ${seed} ${id}`).toBeLessThan(
            tolerance,
          );
        }
      }
    },
  );
});
