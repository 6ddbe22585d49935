import { add, type Point } from "@/lib/geometry";
import { badgeWidth, BADGE_TO_TEXT } from "./scene-mark";
import type { SceneBadge, SceneLabel, SceneShape } from "./scene-types";

/** Screen units between a mark's body and a number beside it. */
const STANDOFF = 20;

/** Every point that a body is drawn through, photo pixels; a ring by its four extremes. */
function bodyPoints(body: SceneShape): readonly Point<"photo">[] {
  switch (body.kind) {
    case "line":
    case "outline":
      return body.points;
    case "ring":
      return [
        { x: body.at.x - body.radius, y: body.at.y },
        { x: body.at.x + body.radius, y: body.at.y },
        { x: body.at.x, y: body.at.y - body.radius },
        { x: body.at.x, y: body.at.y + body.radius },
      ];
    default:
      return "at" in body ? [body.at] : [];
  }
}

const extreme = (points: readonly Point<"photo">[], value: (p: Point<"photo">) => number): Point<"photo"> =>
  points.reduce((a, b) => (value(b) > value(a) ? b : a));

/**
 * Where a mark's number may hang, best first: where it is meant to, across its line, then below, above, right and left
 * of the body.
 */
export function* badgePlaces(badge: SceneBadge, body: SceneShape | undefined): Generator<SceneBadge> {
  yield badge;
  const points = body ? bodyPoints(body) : [];
  if (!body || points.length === 0) return;
  // A spot's cross stands in screen units: its arms need room besides.
  const off = STANDOFF + (body.kind === "spot" ? body.radius : 0);
  const beside = off + badgeWidth(badge) / 2 - 8;
  const { x, y } = badge.offset;
  if (body.kind === "line") yield { ...badge, offset: { x: -x, y: -y } };
  yield { ...badge, at: extreme(points, (p) => p.y), offset: { x: 0, y: off } };
  yield { ...badge, at: extreme(points, (p) => -p.y), offset: { x: 0, y: -off } };
  yield { ...badge, at: extreme(points, (p) => p.x), offset: { x: beside, y: 0 } };
  yield { ...badge, at: extreme(points, (p) => -p.x), offset: { x: -beside, y: 0 } };
}

/** Where the words may stand, best first: on their side of the number, on its other side, beyond it seen from the body. */
export function labelPlaces(label: SceneLabel, badge: SceneBadge | undefined): readonly SceneLabel[] {
  if (!badge) {
    // Words of a guide stand over or under their point.
    return [label, { ...label, offset: { x: label.offset.x, y: -label.offset.y } }];
  }
  const reach = badgeWidth(badge) / 2 + BADGE_TO_TEXT;
  const placed = (side: SceneLabel["side"], from: Point<"view">): SceneLabel => ({
    ...label,
    at: badge.at,
    side,
    offset: add(badge.offset, from),
  });
  const right = placed("right", { x: reach, y: 0 });
  const left = placed("left", { x: -reach, y: 0 });
  const beyond = placed("middle", { x: 0, y: badge.offset.y > 0 ? STANDOFF : -STANDOFF });
  return label.side === "left" ? [left, right, beyond] : [right, left, beyond];
}
