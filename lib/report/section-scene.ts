import { distance, type Point } from "@/lib/geometry";
import type { SceneInk, SceneLabel, SceneShape, Stroke } from "@/lib/marks";
import type { SectionDrawing, SectionPlaces } from "@/lib/section";
import type { PhotoCrop } from "./section-crop";
import { sectionEdgeTags } from "./section-edge-words";

const common = { role: "section", markId: null } as const;
const edgeStroke: Stroke = { ink: "gas", width: 2.5, dash: [14, 6] };
/** Beyond what was drawn: where the edge is taken to go on. */
const onStroke: Stroke = { ink: "gas", width: 1.5, dash: [2, 6] };
const faceStroke: Stroke = { ink: "surface", width: 3, dash: [] };
const fusionStroke: Stroke = { ink: "shape", width: 3, dash: [] };
const pickedStroke: Stroke = { ink: "shape", width: 2.5, dash: [10, 6] };
/** Screen units. */
const SPOT = 8;
const STANDOFF = 20;

/**
 * A section over its photo: edges dashed blue, the face straw, the fusion line purple, and what was found on them named.
 * `within`: where the words of the edges must stand. Without `places` (nothing found yet, or a point is being dragged) the outline is shown as it was picked.
 */
export function sectionScene(
  section: SectionDrawing,
  places: SectionPlaces | null,
  within: PhotoCrop | null = null,
): readonly SceneShape[] {
  const corner = places?.corner ?? null;
  return [
    ...section.edges.flatMap(({ role, points }) => edgeShapes(role, points, corner, within)),
    ...metalShapes(section, places),
    ...(corner === null ? [] : named("corner", corner, "Corner", "gas", { x: -STANDOFF, y: 0 }, "left")),
    ...(places?.toes ?? []).flatMap((toe, i) =>
      toe === null
        ? []
        : named(`toe-${i + 1}`, toe, `Toe ${i + 1}`, "surface", { x: STANDOFF, y: 0 }, "right"),
    ),
    ...(section.root === null
      ? []
      : named("root", section.root, "Root", "fusion", { x: 0, y: STANDOFF }, "middle")),
  ];
}

function edgeShapes(
  role: keyof typeof sectionEdgeTags,
  points: readonly Point<"photo">[],
  corner: Point<"photo"> | null,
  within: PhotoCrop | null,
): readonly SceneShape[] {
  const [first, last] = [points[0]!, points.at(-1)!];
  const near = corner && (distance(first, corner) < distance(last, corner) ? first : last);
  const [other, far] = near === last ? [last, first] : [first, last];
  // Off the end, where another edge may meet it; a joint face has its word half way up.
  const share = role.startsWith("groove") ? 0.5 : 0.85;
  const tag = { x: other.x + share * (far.x - other.x), y: other.y + share * (far.y - other.y) };
  return [
    ...(corner && near
      ? [
          {
            ...common,
            key: `section:${role}-on`,
            kind: "line" as const,
            points: [near, corner],
            stroke: onStroke,
          },
        ]
      : []),
    { ...common, key: `section:${role}`, kind: "line", points, stroke: edgeStroke },
    label(
      `section:${role}-word`,
      within ? inside(tag, within) : tag,
      sectionEdgeTags[role],
      { x: 0, y: -STANDOFF },
      "middle",
    ),
  ];
}

/** The point, or the nearest to it that lies well inside. */
function inside({ x, y }: Point<"photo">, crop: PhotoCrop): Point<"photo"> {
  const [dx, dy] = [0.12 * crop.width, 0.08 * crop.height];
  return {
    x: Math.min(crop.x + crop.width - dx, Math.max(crop.x + dx, x)),
    y: Math.min(crop.y + crop.height - dy, Math.max(crop.y + dy, y)),
  };
}

function metalShapes({ outline }: SectionDrawing, places: SectionPlaces | null): readonly SceneShape[] {
  if (places?.face && places.fusion)
    return [
      {
        ...common,
        key: "section:fusion",
        kind: "line",
        points: places.fusion,
        stroke: fusionStroke,
      },
      { ...common, key: "section:face", kind: "line", points: places.face, stroke: faceStroke },
    ];
  if (outline === null) return [];
  return [{ ...common, key: "section:outline", kind: "outline", points: outline, stroke: pickedStroke }];
}

function named(
  key: string,
  at: Point<"photo">,
  text: string,
  ink: SceneInk,
  offset: Point<"view">,
  side: SceneLabel["side"],
): readonly SceneShape[] {
  return [
    {
      ...common,
      key: `section:${key}`,
      kind: "spot",
      at,
      radius: SPOT,
      stroke: { ink, width: 2.5, dash: [] },
    },
    label(`section:${key}-word`, at, text, offset, side),
  ];
}

const label = (
  key: string,
  at: Point<"photo">,
  text: string,
  offset: Point<"view">,
  side: SceneLabel["side"],
): SceneLabel => ({ ...common, key, kind: "label", at, offset, side, text });
