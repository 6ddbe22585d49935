import { describe, expect, it } from "vitest";
import {
  projectPoint,
  renderScene,
  type ImperfectionTruth,
  type Pixel,
  type RenderedScene,
} from "@/demo-images";
import { buildScene } from "@/demo-images/build-scene";
import { sampleHeight } from "@/demo-images/field/height-grid";
import { grooveProfile } from "@/demo-images/geometry/profile";
import { RenderParamsSchema } from "@/demo-images/params";
import { resolveSpec, type AlterScene } from "@/demo-images/render-scene";
import type { ScenarioName } from "@/demo-images";
import type { ImperfectionId } from "@/lib/trade";
import { distance, grey, greyAt, pixelsInside } from "./picture";

/*
 * Each scene is rendered once as it is and once without its imperfections; where the two pictures differ, they were
 * drawn, and that must be where the truth says and nowhere else. Imperfections that lie apart share one bare picture;
 * those that lie on each other are left out one at a time.
 */

/** Cracks are hair thin: near enough that one is a pixel wide. */
const near = { fieldWidthMm: 62, megapixels: 0.3 } as const;
const asked = (scenario: ScenarioName) =>
  ({
    scenario,
    seed: 7,
    quality: "exact-draft",
    ...(scenario === "hard-cracks" ? near : { megapixels: 0.2 }),
  }) as const;
const without =
  (faults: readonly string[]): AlterScene =>
  (spec) => ({ ...spec, faults: spec.faults.filter(({ kind }) => !faults.includes(kind)) });
/** From where to where across the weld the imperfections lie, mm: drawing the rest of the plates takes as long again. */
const strips: Partial<Record<ScenarioName, readonly [number, number]>> = {
  "stringer-burnback": [-18, 18],
  "tee-toe-crack-short": [-18, 18],
  "butt-tool-marks": [-18, 28],
  "hard-cracks": [-12, 12],
};
const strip =
  (scenario: ScenarioName): AlterScene =>
  (spec) => {
    const [y0, y1] = strips[scenario] ?? [spec.area.y0, spec.area.y1];
    return { ...spec, area: { ...spec.area, y0, y1 } };
  };

const pictures = new Map<string, RenderedScene>();
/** A scene, whole or with some of its imperfections left out; each is rendered once, for all tests. */
function pictureOf(scenario: ScenarioName, leftOut: readonly string[] = []): RenderedScene {
  const name = [scenario, ...leftOut].join();
  const known =
    pictures.get(name) ?? renderScene(asked(scenario), (spec) => strip(scenario)(without(leftOut)(spec)));
  pictures.set(name, known);
  return known;
}
const closeUps = new Map<ScenarioName, RenderedScene>();
function closeUpOf(scenario: ScenarioName): RenderedScene {
  if (scenario === "hard-cracks") return pictureOf(scenario);
  const known = closeUps.get(scenario) ?? renderScene({ ...asked(scenario), ...near }, strip(scenario));
  closeUps.set(scenario, known);
  return known;
}
const marksOf = (picture: RenderedScene, kind: ImperfectionId): readonly ImperfectionTruth[] =>
  picture.truth.imperfections.filter((one) => one.kind === kind);

/** Pixels of a mark: inside its outline, or within two of its line. */
function pixelsOf({ closed, outlinePx }: ImperfectionTruth): Pixel[] {
  if (closed) return pixelsInside(outlinePx);
  return outlinePx.slice(1).flatMap((to, i) => {
    const from = outlinePx[i]!;
    const steps = Math.ceil(distance(from, to));
    return Array.from({ length: steps }, (_, k) =>
      [-1.5, 0, 1.5].map((aside): Pixel => {
        const t = k / steps;
        const [dx, dy] = [(to[0] - from[0]) / (steps || 1), (to[1] - from[1]) / (steps || 1)];
        return [from[0] + (to[0] - from[0]) * t - dy * aside, from[1] + (to[1] - from[1]) * t + dx * aside];
      }),
    ).flat();
  });
}

/** Mean change of the three channels where a mark lies, and further than its clearance from any mark, both in pixels. */
function changes(
  picture: RenderedScene,
  other: RenderedScene,
  marks: readonly (readonly [ImperfectionTruth, clearPx: number])[],
) {
  const { width, height } = picture;
  const change = ([x, y]: Pixel): number => {
    const k = 3 * (Math.floor(y) * width + Math.floor(x));
    return [0, 1, 2].reduce((sum, c) => sum + Math.abs(picture.rgb[k + c]! - other.rgb[k + c]!), 0) / 3;
  };
  const near = new Uint8Array(width * height);
  const inside: number[] = [];
  for (const [mark, clearPx] of marks)
    for (const [x, y] of pixelsOf(mark)) {
      inside.push(change([x, y]));
      for (let j = Math.max(0, Math.floor(y) - clearPx); j < Math.min(height, y + clearPx + 1); j++)
        near.fill(
          1,
          j * width + Math.max(0, Math.floor(x) - clearPx),
          j * width + Math.min(width, x + clearPx + 1),
        );
    }
  const outside: number[] = [];
  for (let y = 0; y < height; y += 3)
    for (let x = 0; x < width; x += 3) if (near[y * width + x] === 0) outside.push(change([x, y]));
  const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
  return { inside: mean(inside), outside: mean(outside) };
}

/** What is left out of a scene together, and how many pixels beyond its marks each kind may still change. */
const cases: readonly {
  readonly scenario: ScenarioName;
  readonly leftOut: readonly string[];
  readonly kinds: Partial<Record<ImperfectionId, number>>;
}[] = [
  {
    scenario: "stringer-burnback",
    leftOut: ["irregular-surface", "burnback", "inclusion"],
    kinds: { "irregular-surface": 9, burnback: 38, "copper-inclusion": 4 },
  },
  { scenario: "tee-sagging", leftOut: ["sagging"], kinds: { sagging: 8 } },
  { scenario: "tee-sagging", leftOut: ["steep-toe"], kinds: { "steep-toe": 15 } },
  {
    scenario: "tee-toe-crack-short",
    leftOut: ["toe-crack", "wide-root-gap"],
    kinds: { "toe-crack": 4, "wide-root-gap": 10 },
  },
  {
    scenario: "butt-tool-marks",
    leftOut: ["torn-surface", "grinding-mark", "chipping-marks", "underflushing"],
    kinds: { "torn-surface": 19, "grinding-mark": 9, "chipping-mark": 5, underflushing: 25 },
  },
  {
    scenario: "hard-cracks",
    leftOut: ["radiating-crack", "branching-crack"],
    kinds: { "radiating-crack": 6, "branching-crack": 6 },
  },
  { scenario: "tig-butt-pulled", leftOut: ["inclusion"], kinds: { "tungsten-inclusion": 8 } },
];
const idsOf = (kinds: object) => Object.keys(kinds) as ImperfectionId[];
const leftOutOf = (scenario: ScenarioName) => cases.find((one) => one.scenario === scenario)!.leftOut;

describe("an imperfection is drawn where its truth says", () => {
  it.each(cases.flatMap((one) => idsOf(one.kinds).map((kind) => [kind, one] as const)))(
    "%s",
    (kind, { kinds, scenario, leftOut }) => {
      const picture = pictureOf(scenario);
      const bare = pictureOf(scenario, leftOut);
      expect(marksOf(bare, kind)).toEqual([]);
      const own = marksOf(picture, kind);
      expect(own.length).toBeGreaterThan(0);
      const all = idsOf(kinds).flatMap((id) =>
        marksOf(picture, id).map((mark) => [mark, kinds[id]!] as const),
      );
      const { inside } = changes(
        picture,
        bare,
        all.filter(([mark]) => mark.kind === kind),
      );
      expect(inside).toBeGreaterThan(9);
      expect(changes(picture, bare, all).outside).toBeLessThan(0.08 * inside);
    },
  );

  it("crack-group: all its cracks lie inside its ring, and it holds as many as it says", () => {
    const picture = pictureOf("hard-cracks");
    const [group] = marksOf(picture, "crack-group");
    const bare = pictureOf("hard-cracks", ["crack-group"]);
    const dark = pixelsInside(group!.outlinePx).filter(
      ([x, y]) => greyAt(bare, x, y) - greyAt(picture, x, y) > 25,
    );
    expect(dark.length).toBeGreaterThan(60);
    expect(changes(picture, bare, [[group!, 4]]).outside).toBeLessThan(0.3);
    expect(clusters(dark)).toBe(group!.sizes.crackCount);
  });

  it("angular misalignment: without it the pulled plate alone looks otherwise, and the rule's plate does not", () => {
    const level: AlterScene = (spec) => ({
      ...spec,
      profile: grooveProfile({ thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0 }),
    });
    const picture = pictureOf("tig-butt-pulled");
    const flat = renderScene(asked("tig-butt-pulled"), level);
    const { width, height } = picture;
    const changed = (from: number, to: number): number => {
      let sum = 0;
      let count = 0;
      for (let y = Math.round(0.3 * height); y < 0.75 * height; y += 2)
        for (let x = Math.round(from * width); x < to * width; x += 2, count++)
          sum += Math.abs(grey(picture, x, y) - grey(flat, x, y));
      return sum / count;
    };
    // Left in the picture lies the plate that was pulled up, right the one with the rule.
    expect(changed(0.2, 0.3)).toBeGreaterThan(4 * changed(0.62, 0.72));
    expect(changed(0.2, 0.3)).toBeGreaterThan(6);
    const [bent] = marksOf(picture, "angular-misalignment");
    const [sound] = marksOf(flat, "angular-misalignment");
    expect([Math.round(bent!.sizes.angleDeg!), Math.round(sound!.sizes.angleDeg!)]).toEqual([14, 0]);
  });

  it("missing length: from the end of the bead to the soapstone stroke, with bare plate between", () => {
    const picture = pictureOf("tee-toe-crack-short");
    const [missing] = marksOf(picture, "missing-length");
    const line = missing!.outlinePx;
    const [first, last] = [line[0]!, line.at(-1)!];
    expect(distance(first, picture.truth.weld.endPx)).toBeLessThan(6);
    const bare = pictureOf("tee-toe-crack-short", ["missing-length"]);
    const white: Pixel[] = [];
    for (let y = 0; y < picture.height; y++)
      for (let x = 0; x < picture.width; x++)
        if (grey(picture, x, y) - grey(bare, x, y) > 25) white.push([x, y]);
    expect(white.length).toBeGreaterThan(300);
    // Near the joint the strokes at the far end stand on both sides of the line's last point, across it.
    const pxPerMm = distance(first, last) / missing!.sizes.missingMm!;
    const there = white.filter((p) => distance(p, last) < 8 * pxPerMm);
    const along = there.map(([x, y]) => {
      const [dx, dy] = [last[0] - first[0], last[1] - first[1]];
      return ((x - last[0]) * dx + (y - last[1]) * dy) / Math.hypot(dx, dy) / pxPerMm;
    });
    expect(there.length).toBeGreaterThan(50);
    expect(Math.abs(along.reduce((sum, a) => sum + a, 0) / along.length)).toBeLessThan(1.5);
    const { sizes } = missing!;
    expect(sizes.laidMm! + sizes.missingMm!).toBeCloseTo(sizes.askedMm!, 6);
  });
});

/** Groups of pixels that hang together, over gaps of half a millimetre: a crack closes to a hair here and there. */
function clusters(pixels: readonly Pixel[]): number {
  const left = new Set(pixels);
  let count = 0;
  for (const start of pixels) {
    if (!left.delete(start)) continue;
    const queue = [start];
    let size = 0;
    for (let next = queue.pop(); next !== undefined; next = queue.pop(), size++)
      for (const other of left)
        if (distance(next, other) < 5.5) {
          left.delete(other);
          queue.push(other);
        }
    if (size > 4) count++;
  }
  return count;
}

describe("it looks like what it is", () => {
  const ratios = (picture: RenderedScene, pixels: readonly Pixel[]): number => {
    const sums = [0, 0];
    for (const [x, y] of pixels) {
      const k = 3 * (Math.floor(y) * picture.width + Math.floor(x));
      sums[0]! += picture.rgb[k]!;
      sums[1]! += picture.rgb[k + 2]!;
    }
    return sums[0]! / sums[1]!;
  };
  const meanGrey = (picture: RenderedScene, pixels: readonly Pixel[]): number =>
    pixels.reduce((sum, [x, y]) => sum + greyAt(picture, x, y), 0) / pixels.length;
  const grown = (outline: readonly Pixel[], by: number): Pixel[] => {
    const [cx, cy] = [0, 1].map((i) => outline.reduce((sum, p) => sum + p[i as 0 | 1], 0) / outline.length);
    return outline.map(([x, y]) => [cx! + (x - cx!) * by, cy! + (y - cy!) * by] as const);
  };
  const around = (outline: readonly Pixel[], inner: number, outer: number): Pixel[] => {
    const within = new Set(pixelsInside(grown(outline, inner)).map((p) => p.join()));
    return pixelsInside(grown(outline, outer)).filter((p) => !within.has(p.join()));
  };

  it("copper is redder than the bead around it", () => {
    const picture = pictureOf("stringer-burnback");
    const [copper] = marksOf(picture, "copper-inclusion");
    const inside = ratios(picture, pixelsInside(grown(copper!.outlinePx, 0.7)));
    expect(inside).toBeGreaterThan(1.3 * ratios(picture, around(copper!.outlinePx, 1.4, 2.2)));
  });

  it("the ball of a burnback is brighter and redder than the burnt crater it stands in", () => {
    const picture = pictureOf("stringer-burnback");
    const [ball] = marksOf(picture, "burnback");
    const inside = pixelsInside(grown(ball!.outlinePx, 0.8));
    const crater = around(ball!.outlinePx, 1.15, 1.6);
    expect(meanGrey(picture, inside)).toBeGreaterThan(meanGrey(picture, crater) + 15);
    expect(ratios(picture, inside)).toBeGreaterThan(1.1 * ratios(picture, crater));
  });

  it("tungsten is brighter than the burnt ring around it and than the bead", () => {
    const picture = pictureOf("tig-butt-pulled");
    for (const speck of marksOf(picture, "tungsten-inclusion")) {
      const inside = meanGrey(picture, pixelsInside(grown(speck.outlinePx, 0.8)));
      expect(inside).toBeGreaterThan(meanGrey(picture, around(speck.outlinePx, 1.2, 1.8)) + 40);
      expect(inside).toBeGreaterThan(meanGrey(picture, around(speck.outlinePx, 2.5, 3.5)) + 20);
    }
  });

  it.each([
    ["toe-crack", "tee-toe-crack-short", -2],
    ["radiating-crack", "hard-cracks", -4],
    ["branching-crack", "hard-cracks", -4],
  ] as const)("%s is a dark line on both sides of which it is lighter", (kind, scenario, otherSide) => {
    const picture = closeUpOf(scenario);
    for (const { outlinePx } of marksOf(picture, kind)) {
      // Between a toe crack and the dark toe itself lie two pixels of plate.
      // The darkest within a pixel of the line, against what lies on either side of it.
      const darkest = (aside: number): number => {
        const rows = outlinePx.slice(1).map((to, i) => {
          const from = outlinePx[i]!;
          const length = distance(from, to);
          const [nx, ny] = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length];
          const [x, y] = [(from[0] + to[0]) / 2 + nx * aside, (from[1] + to[1]) / 2 + ny * aside];
          return Math.min(...[-1, -0.5, 0, 0.5, 1].map((off) => greyAt(picture, x + nx * off, y + ny * off)));
        });
        return rows.toSorted((a, b) => a - b)[rows.length >> 1]!;
      };
      expect(darkest(0)).toBeLessThan(0.75 * darkest(4));
      expect(darkest(0)).toBeLessThan(0.75 * darkest(otherSide));
    }
  });

  it("a wide root gap is a dark slit as high as it says beside the bead, and nothing under the bead", () => {
    const picture = closeUpOf("tee-toe-crack-short");
    const { camera, weld } = picture.truth;
    const gap = marksOf(picture, "wide-root-gap").at(-1)!;
    // The stretch from the bead's end to the picture's edge: base plate at z = 0, edge at 45 degrees above it.
    const pixel = (x: number, up: number): Pixel =>
      projectPoint(camera, [x, up * Math.SQRT1_2, up * Math.SQRT1_2]);
    const seen = Array.from({ length: 12 }, (_, i) => 23 + 0.5 * i).map((x) => {
      const [low, high] = [pixel(x, 0), pixel(x, gap.sizes.gapMm!)];
      const at = (t: number): number =>
        greyAt(picture, low[0] + (high[0] - low[0]) * t, low[1] + (high[1] - low[1]) * t);
      const shares = Array.from({ length: 200 }, (_, i) => (i - 50) / 100);
      return shares.filter((t) => at(t) < 0.6 * at(1.8)).length / 100;
    });
    // Its lowest part is the base plate running into its shade.
    expect(Math.min(...seen)).toBeGreaterThan(0.85);
    expect(Math.max(...seen)).toBeLessThan(1.1);
    const whole = pictureOf("tee-toe-crack-short");
    const bare = pictureOf("tee-toe-crack-short", leftOutOf("tee-toe-crack-short"));
    expect(meanGrey(whole, weld.axisPx)).toBeCloseTo(meanGrey(bare, weld.axisPx), 0);
  });

  it("a ground floor is smooth where the cap's ripples were", () => {
    const picture = pictureOf("butt-tool-marks");
    const bare = pictureOf("butt-tool-marks", leftOutOf("butt-tool-marks"));
    const [ground] = marksOf(picture, "underflushing");
    const pixels = pixelsInside(grown(ground!.outlinePx, 0.5));
    const grain = (of: RenderedScene): number =>
      pixels.reduce((sum, [x, y]) => sum + Math.abs(greyAt(of, x, y) - greyAt(of, x + 3, y)), 0) /
      pixels.length;
    expect(grain(picture)).toBeLessThan(0.6 * grain(bare));
  });

  it.each([
    ["grinding-mark", 25],
    ["chipping-mark", 12],
    ["torn-surface", 12],
  ] as const)("%s is brighter than the scale around it", (kind, more) => {
    const picture = pictureOf("butt-tool-marks");
    const marks = marksOf(picture, kind);
    const bare = pictureOf("butt-tool-marks", leftOutOf("butt-tool-marks"));
    const brighter = marks.map(({ outlinePx }) => {
      const inside = pixelsInside(outlinePx);
      return meanGrey(picture, inside) - meanGrey(bare, inside);
    });
    expect(brighter.reduce((sum, one) => sum + one, 0) / marks.length).toBeGreaterThan(more);
  });
});

describe("sizes are those of the surface as it lies", () => {
  const scenes = new Map<string, ReturnType<typeof buildScene>>();
  const build = (scenario: ScenarioName, seed: number, leftOut: readonly string[] = []) => {
    const name = [scenario, seed, ...leftOut].join();
    const spec = without(leftOut)(resolveSpec(RenderParamsSchema.parse({ scenario, seed })));
    const known = scenes.get(name) ?? buildScene({ ...spec, area: { ...spec.area, y0: -16, y1: 16 } }, 0.15);
    scenes.set(name, known);
    return known;
  };
  type Scene = ReturnType<typeof build>;
  const sizesOf = (scene: Scene, kind: ImperfectionId) =>
    scene.draft.records.find((record) => record.kind === kind)!.sizes;

  it.each([1, 7])(
    "underflushing: the lowest place of the ground field lies so far below the plate, seed %d",
    (seed) => {
      const { grid, ...scene } = build("butt-tool-marks", seed);
      let lowest = 0;
      for (let x = -44; x < -10; x += 0.5)
        for (let y = -6; y < 6; y += 0.5) lowest = Math.min(lowest, sampleHeight(grid, x, y));
      const { depthMm } = sizesOf({ grid, ...scene }, "underflushing");
      expect(Math.abs(-lowest - depthMm!)).toBeLessThan(0.12);
      expect(depthMm!).toBeGreaterThan(0.6);
    },
  );

  it.each([1, 7])("irregular surface: crest to trough grows from the even bead's, seed %d", (seed) => {
    const rough = build("stringer-burnback", seed);
    const even = build("stringer-burnback", seed, ["irregular-surface"]);
    const swing = ({ grid }: Scene): number => {
      const line = Array.from({ length: 200 }, (_, i) => sampleHeight(grid, -34 + i * 0.25, 0));
      return Math.max(...line) - Math.min(...line);
    };
    expect(swing(rough)).toBeGreaterThan(1.6 * swing(even));
    expect(Math.abs(sizesOf(rough, "irregular-surface").heightMm! - swing(rough))).toBeLessThan(0.5);
  });

  it.each([1, 7])("wide root gap: the upright's edge stands so far above the base plate, seed %d", (seed) => {
    const scene = build("tee-toe-crack-short", seed);
    const gaps = scene.draft.records.filter(({ kind }) => kind === "wide-root-gap");
    expect(gaps.length).toBe(2);
    for (const { outline, sizes } of gaps) {
      const [from, to] = [outline[0]![0], outline.at(-1)![0]];
      // Up the upright's surface, which leans at 45 degrees, until it is there.
      const edges = Array.from({ length: 40 }, (_, i) => {
        const x = from + 0.5 + ((to - from - 1) * i) / 39;
        let gap = 0.3;
        while (sampleHeight(scene.grid, x, gap * Math.SQRT1_2) < 0) gap += 0.02;
        return gap;
      });
      expect(Math.abs(Math.max(...edges) - sizes.gapMm!)).toBeLessThan(0.12);
      expect(sizes.lengthMm).toBeCloseTo(to - from, 6);
    }
  });

  it.each([1, 7])("sagging: the face stands out below and is hollow above, seed %d", (seed) => {
    const sunk = build("tee-sagging", seed);
    const even = build("tee-sagging", seed, ["sagging", "steep-toe"]);
    // Middle of the run; lower half of the face against the upper, plan heights.
    const moved = (y: number): number =>
      Array.from(
        { length: 100 },
        (_, i) => sampleHeight(sunk.grid, -25 + i * 0.5, y) - sampleHeight(even.grid, -25 + i * 0.5, y),
      ).reduce((sum, d) => sum + d, 0) / 100;
    expect(moved(-3.9)).toBeGreaterThan(0.8);
    expect(moved(1.8)).toBeLessThan(-0.5);
    expect(sizesOf(sunk, "sagging").sagMm!).toBeGreaterThan(1.5);
  });

  it.each([1, 7])(
    "steep toe: nearly upright on its plate, far steeper than the toe that was laid, seed %d",
    (seed) => {
      const steep = build("tee-sagging", seed);
      const laid = build("tee-sagging", seed, ["sagging", "steep-toe"]);
      // Turned by 45 degrees, so that the lower plate lies level: 0.5 mm in from the toe, rise over run.
      const angle = ({ grid, draft }: Scene): number => {
        const angles = Array.from({ length: 100 }, (_, i) => {
          const x = -25 + i * 0.5;
          const toe = draft.beads[0]!.toesAt(x)!.leftMm;
          const [dy, dz] = [0.35, sampleHeight(grid, x, toe + 0.35) + toe];
          return 180 - (Math.atan2((dy + dz) / Math.SQRT2, (dy - dz) / Math.SQRT2) * 180) / Math.PI;
        });
        return angles.toSorted((a, b) => a - b)[50]!;
      };
      const { angleDeg } = sizesOf(steep, "steep-toe");
      expect(Math.abs(angleDeg! - angle(steep))).toBeLessThan(6);
      expect(angleDeg!).toBeGreaterThan(80);
      expect(angleDeg!).toBeLessThan(110);
      expect(angle(laid)).toBeGreaterThan(angleDeg! + 15);
    },
  );
});
