import { z } from "zod";
import { RunSetupSchema } from "@/lib/setup";
import { imperfectionIds, imperfections, places, stretches } from "@/lib/trade";
import { emptyDrawing, type Drawing, type Mark, type MarkShapeData } from "@/lib/marks";

const PixelSchema = z.tuple([z.number(), z.number()]);
type Pixel = z.infer<typeof PixelSchema>;

/** As much of a picture's truth file as the demo needs. */
export const DemoTruthSchema = z.object({
  setup: RunSetupSchema,
  scaleObject: z
    .object({
      keyPoints: z.array(z.object({ px: PixelSchema, planeMm: PixelSchema })).min(2),
    })
    .nullable(),
  weld: z.object({ axisPx: z.array(PixelSchema) }),
  imperfections: z.array(
    z.object({
      kind: z.enum(imperfectionIds),
      closed: z.boolean(),
      outlinePx: z.array(PixelSchema).min(1),
      place: z.enum(places).nullable(),
      stretch: z.enum(stretches).nullable(),
    }),
  ),
});
export type DemoTruth = z.infer<typeof DemoTruthSchema>;

/** A careful person marks a handful; a truth file may name fifty spatter balls. */
const MOST_OF_ONE_KIND = 6;
/** As many balls as a bead may have before anybody writes "spatter"; fewer are chipped off with the slag. Invented. */
const FEW_BALLS = 40;
const MOST_POINTS = 24;

const point = ([x, y]: Pixel) => ({ x, y });

function thin<T>(items: readonly T[], most: number): T[] {
  const step = Math.max(1, (items.length - 1) / (most - 1));
  if (items.length <= most) return [...items];
  return Array.from({ length: most }, (_, k) => items[Math.round(k * step)] as T);
}

/** Whether there is spatter, but too little to be marked: then nobody says either that there is none. */
export function isSpatterLeftOut({ imperfections: all }: DemoTruth): boolean {
  const balls = all.filter(({ kind }) => kind === "spatter").length;
  return balls > 0 && balls <= FEW_BALLS;
}

/** The marks somebody careful would have drawn: true places, few points. */
export function demoDrawing(truth: DemoTruth): Drawing {
  const seen = new Map<string, number>();
  const noSpatter = isSpatterLeftOut(truth);
  const marks = truth.imperfections.flatMap((one, index): Mark[] => {
    if (noSpatter && one.kind === "spatter") return [];
    const count = (seen.get(one.kind) ?? 0) + 1;
    seen.set(one.kind, count);
    if (count > MOST_OF_ONE_KIND) return [];
    return [
      {
        id: `demo${index + 1}`,
        imperfection: one.kind,
        shape: demoShape(one),
        place: one.place,
        stretch: one.stretch,
        patterns: [],
        gauge: [],
        note: "",
      },
    ];
  });
  const axis = thin(truth.weld.axisPx, 7).map(point);
  return { ...emptyDrawing, scale: demoScale(truth), weldLine: axis.length >= 2 ? axis : null, marks };
}

function demoShape({ kind, closed, outlinePx }: DemoTruth["imperfections"][number]): MarkShapeData {
  const points = thin(outlinePx, MOST_POINTS).map(point);
  if (!closed && points.length >= 2) return { kind: "line", points };
  if (imperfections[kind].usualShape === "line" && outlinePx.length >= 6) return middleLine(outlinePx);
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
  const round = kind === "surface-porosity" || kind === "spatter" || kind === "crater-pipe";
  if (points.length < 3) return { kind: "point", at: middle, radius: null };
  if (!round) return { kind: "outline", points };
  const radius =
    points.reduce((sum, { x, y }) => sum + Math.hypot(x - middle.x, y - middle.y), 0) / points.length;
  return { kind: "point", at: middle, radius };
}

/** Along a band drawn forth on one edge and back on the other: half way between the two. */
function middleLine(outlinePx: readonly Pixel[]): MarkShapeData {
  const half = Math.floor(outlinePx.length / 2);
  const middle = outlinePx.slice(0, half).map(([x, y], k) => {
    const [otherX, otherY] = outlinePx[outlinePx.length - 1 - k] ?? [x, y];
    return { x: (x + otherX) / 2, y: (y + otherY) / 2 };
  });
  return { kind: "line", points: thin(middle, 8) };
}

/** The two key points of the scale object that lie farthest apart, with their true distance. */
function demoScale({ scaleObject }: DemoTruth): Drawing["scale"] {
  if (scaleObject === null) return null;
  const pairs = scaleObject.keyPoints.flatMap((a, i) =>
    scaleObject.keyPoints.slice(i + 1).map((b) => ({
      a: point(a.px),
      b: point(b.px),
      lengthMm: Math.hypot(a.planeMm[0] - b.planeMm[0], a.planeMm[1] - b.planeMm[1]),
    })),
  );
  const [longest] = pairs.sort((one, other) => other.lengthMm - one.lengthMm);
  return longest
    ? { kind: "two-points", ...longest, lengthMm: Math.round(longest.lengthMm * 100) / 100 }
    : null;
}
