import { readdirSync, readFileSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import path from "node:path";
import { describe, expect, it } from "vitest";
import {
  demoSections,
  macroNames,
  macroTruthOf,
  MacroParamsSchema,
  renderMacro,
  type MacroTruth,
} from "@/demo-images";
import { crossesItself } from "@/lib/geometry";
import { imperfectionIds } from "@/lib/trade";
import { inDepth } from "../setup/in-depth";

const folder = fileURLToPath(new URL("../../demo-images/sections", import.meta.url));
const inView = ({ widthPx, heightPx }: MacroTruth, [x, y]: readonly [number, number]): boolean =>
  x > 0 && y > 0 && x < widthPx && y < heightPx;

describe("pictures of sections", () => {
  it("the same seed gives the same bytes and truth, another seed others", () => {
    const params = { scenario: "section-tee-slag", megapixels: 0.1, seed: 3 } as const;
    const [a, b, c] = [renderMacro(params), renderMacro(params), renderMacro({ ...params, seed: 4 })];
    expect(Buffer.compare(Buffer.from(a.rgb), Buffer.from(b.rgb))).toBe(0);
    expect(JSON.stringify(a.truth)).toBe(JSON.stringify(b.truth));
    expect(JSON.stringify(macroTruthOf(params))).toBe(JSON.stringify(a.truth));
    expect(Buffer.compare(Buffer.from(a.rgb), Buffer.from(c.rgb))).not.toBe(0);
  });

  it.each(macroNames.filter((_, i) => i % inDepth(5, 1) === 0))(
    "%s: outline whole, weld and scale in view, whatever the seed",
    (scenario) => {
      for (let seed = 1; seed <= inDepth(1, 12); seed++) {
        const truth = macroTruthOf({ scenario, seed, megapixels: 1 });
        expect(crossesItself(truth.outlineMm.map(([x, y]) => ({ x, y })))).toBe(false);
        expect(truth.outlinePx.every((point) => inView(truth, point))).toBe(true);
        expect(truth.scaleObject!.keyPoints.every(({ px }) => inView(truth, px))).toBe(true);
        expect(Object.values(truth.sizes).every(Number.isFinite)).toBe(true);
        for (const { kind } of truth.imperfections) expect(imperfectionIds).toContain(kind);
      }
    },
  );

  it("a fault is of the size it says: in mm on the face, from the pixels it is drawn at", () => {
    const truth = macroTruthOf({
      scenario: "section-tee-undercut",
      seed: 5,
      megapixels: 4,
      tiltDeg: 0,
      distortion: 0,
    });
    const cut = truth.imperfections.find(({ kind }) => kind === "undercut")!;
    const edge = truth.edges.find(({ role }) => role === "plate-2")!.px;
    const [[ax, ay], [bx, by]] = [edge[0]!, edge[1]!];
    const off = cut.px.map(
      ([x, y]) => ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay),
    );
    // Ten millimetres or so of edge give the scale; the groove reaches this far into the plate.
    const perMm =
      Math.hypot(...([0, 1] as const).map((i) => truth.toesPx[0][i] - truth.toesPx[1][i])) /
      truth.sizes["face-width"]!;
    const into = Math.min(Math.abs(Math.min(...off)), Math.abs(Math.max(...off)));
    const deep = Math.max(Math.abs(Math.min(...off)), Math.abs(Math.max(...off)));
    expect(deep / perMm).toBeCloseTo(cut.sizes["depthMm"]!, 2);
    expect(into / perMm).toBeCloseTo(0.8 * cut.sizes["depthMm"]!, 2);
  });

  it("weld, heat-affected and parent metal differ in the picture as they do under an etchant", () => {
    const { rgb, width, truth } = renderMacro({
      scenario: "section-tee-convex",
      seed: 3,
      megapixels: inDepth(0.25, 0.5),
      tiltDeg: 0,
      distortion: 0,
    });
    const h = truth.faceToImage;
    const tone = (xMm: number, yMm: number): number => {
      const w = h[6] * xMm + h[7] * yMm + h[8];
      const [x, y] = [(h[0] * xMm + h[1] * yMm + h[2]) / w, (h[3] * xMm + h[4] * yMm + h[5]) / w];
      let sum = 0;
      for (let j = -4; j <= 4; j++)
        for (let i = -4; i <= 4; i++) sum += rgb[3 * ((Math.round(y) + j) * width + Math.round(x) + i) + 1]!;
      return sum / 81;
    };
    const weld = tone(2.5, 2.5);
    const deepest = Math.max(truth.sizes["fusion-1-greatest"]!, truth.sizes["root-penetration"]!);
    const haz = tone(4, -deepest - 0.7);
    const parent = tone(-12, -6);
    expect(haz).toBeLessThan(weld - 5);
    expect(weld).toBeLessThan(parent - 5);
  });

  it("refuses what it cannot draw", () => {
    expect(MacroParamsSchema.safeParse({ scenario: "section-pipe" }).success).toBe(false);
    expect(MacroParamsSchema.safeParse({ scenario: "section-lap", tiltDeg: 80 }).success).toBe(false);
  });
});

describe("the sections of the demo set", () => {
  it("are small, with their truth beside them as the generator gives it today", () => {
    const names = readdirSync(folder).filter((name) => name.endsWith(".jpg"));
    expect(names.sort()).toEqual(demoSections.map(({ scenario }) => `${scenario}.jpg`).sort());
    for (const params of demoSections.filter((_, i) => i % inDepth(3, 1) === 1 % inDepth(3, 1))) {
      expect(statSync(path.join(folder, `${params.scenario}.jpg`)).size).toBeLessThan(400_000);
      const stored = readFileSync(path.join(folder, `${params.scenario}.json`), "utf8");
      expect(stored).toBe(`${JSON.stringify(macroTruthOf(params))}\n`);
    }
  });
});
