import { issue } from "@/lib/base";
import { polygonArea, subtract, type Point } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { buttFrame } from "./butt-frame";
import { buttShape } from "./butt-shape";
import type { SectionDrawing } from "./drawing";
import { filletCorner } from "./fillet-corner";
import { filletShape } from "./fillet-shape";
import { partsOf, type SectionPicks } from "./picks";
import { planButt } from "./plan-butt";
import { planFillet } from "./plan-fillet";
import { bestIndex, curveOf, picksOf as pointsAt, type Arc } from "./ring";
import type { SectionShape } from "./shape";
import { smoothPath } from "./smooth-path";
import type { SectionIssue, SectionKnown, SectionPlaces } from "./types";

/** A section with its parts found: from here on every figure follows from the points alone. */
export interface Prepared {
  /** Of all picks, in mm, in the order of `SectionPicks`. */
  readonly shape: (points: readonly PlanePoint[]) => SectionShape;
  readonly places: SectionPlaces;
  readonly issues: readonly SectionIssue[];
}

const noPlaces: SectionPlaces = { toes: [null, null], corner: null, face: null, fusion: null };
const noShape: SectionShape = { numbers: {}, extremes: {} };

/**
 * Finds toes, face and root on the points as picked.
 *
 * @param mm All picks in mm. @param hints Where the person put the toes, in mm; null: to be found.
 */
export function prepare(
  drawing: SectionDrawing,
  picks: SectionPicks,
  mm: readonly PlanePoint[],
  hints: readonly [PlanePoint | null, PlanePoint | null],
  known: SectionKnown,
): Prepared {
  return drawing.joint === "fillet"
    ? prepareFillet(picks, mm, hints)
    : prepareButt(picks, mm, hints, known.plateThicknessMm);
}

function prepareFillet(
  picks: SectionPicks,
  mm: readonly PlanePoint[],
  hints: readonly [PlanePoint | null, PlanePoint | null],
): Prepared {
  const corner = <S>(points: readonly Point<S>[]) => {
    const { ring, edge } = partsOf(picks, points);
    const [one, two] = [edge("plate-1"), edge("plate-2")];
    return one === null || two === null ? null : filletCorner(one, two, ring);
  };
  const found = corner(mm);
  if (found === null) return areaAlone(picks, mm, []);
  if (!found.ok) return areaAlone(picks, mm, found.issues);
  const { ring, root } = partsOf(picks, mm);
  const plan = planFillet(found.value, ring, root, hints);
  if (plan === null) return areaAlone(picks, mm, [issue("toes-not-found", ["outline"])]);
  const seen = corner(picks.all);
  return {
    shape: (points) => {
      const at = corner(points);
      const parts = partsOf(picks, points);
      return at === null || !at.ok ? noShape : filletShape(at.value, plan, parts.ring, parts.root);
    },
    places: {
      toes: [picks.all[plan.toes[0]]!, picks.all[plan.toes[1]]!],
      corner: seen?.ok ? seen.value.at : null,
      face: curveOf(picks.all, plan.face),
      fusion: joined(picks, [plan.fusion[0], plan.fusion[1]]),
    },
    issues: [],
  };
}

function prepareButt(
  picks: SectionPicks,
  mm: readonly PlanePoint[],
  hints: readonly [PlanePoint | null, PlanePoint | null],
  statedThickness: number | null,
): Prepared {
  const [left, right] = sides(picks);
  const frame = (points: readonly PlanePoint[]) => {
    const { ring, edge } = partsOf(picks, points);
    const face = edge("face");
    return face === null
      ? null
      : buttFrame(face, edge("back"), ring, subtract(points[right]!, points[left]!), statedThickness);
  };
  const found = frame(mm);
  if (found === null) return areaAlone(picks, mm, []);
  if (!found.ok) return areaAlone(picks, mm, found.issues);
  const plan = planButt(found.value, partsOf(picks, mm).ring, hints);
  if (plan === null) return areaAlone(picks, mm, [issue("toes-not-found", ["outline"])]);
  return {
    shape: (points) => {
      const at = frame(points);
      const { ring, edge, root } = partsOf(picks, points);
      return at === null || !at.ok
        ? noShape
        : buttShape(at.value, plan, ring, [edge("groove-1"), edge("groove-2")], root);
    },
    places: {
      toes: [picks.all[plan.toes[0]]!, picks.all[plan.toes[1]]!],
      corner: null,
      face: curveOf(picks.all, plan.face),
      fusion: joined(picks, plan.root === null ? plan.sides : [plan.sides[0], plan.root, plan.sides[1]]),
    },
    issues: [],
  };
}

/** A pick on either side of the weld: of the joint faces where they are drawn, else the outline's left and right. */
function sides(picks: SectionPicks): readonly [number, number] {
  const groove = (role: "groove-1" | "groove-2") => picks.edges.find((edge) => edge.role === role);
  const [one, two] = [groove("groove-1"), groove("groove-2")];
  const ring = picks.all.slice(0, picks.outline);
  const right = bestIndex(ring, ({ x }) => x);
  const left = bestIndex(ring, ({ x }) => -x);
  return one !== undefined && two !== undefined ? [one.from, two.from] : [left, right];
}

/** The arcs from toe 1 to toe 2, of which the last runs from toe 2. */
function joined(picks: SectionPicks, arcs: readonly Arc[]): readonly Point<"photo">[] {
  const curves = arcs.map((arc) => curveOf(picks.all, arc));
  return curves.flatMap((curve, i) => (i === curves.length - 1 && i > 0 ? [...curve].reverse() : curve));
}

/** Without a joint to lay it in, an outline still has an area: smooth from its sharpest corner round to it again. */
function areaAlone(
  picks: SectionPicks,
  mm: readonly PlanePoint[],
  issues: readonly SectionIssue[],
): Prepared {
  const ring = mm.slice(0, picks.outline);
  const n = ring.length;
  const start = bestIndex([...ring.keys()], (i) => turnAt(ring, i));
  const indices = Array.from({ length: n + 1 }, (_, i) => (start + i) % n);
  return {
    shape: (points) => ({
      numbers: { "weld-area": polygonArea(smoothPath(pointsAt(points, indices))) },
      extremes: {},
    }),
    places: noPlaces,
    issues,
  };
}

function turnAt(ring: readonly PlanePoint[], i: number): number {
  const n = ring.length;
  const before = subtract(ring[i]!, ring[(i + n - 1) % n]!);
  const after = subtract(ring[(i + 1) % n]!, ring[i]!);
  return Math.abs(
    Math.atan2(before.x * after.y - before.y * after.x, before.x * after.x + before.y * after.y),
  );
}
