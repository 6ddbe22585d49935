import { findStrip, type FoundStrip, type RgbaImage } from "@/lib/strip";
import { edgePoints } from "./edge-points";
import { findCard, type FoundCard } from "./find-card";
import { findDisc, type FoundDisc } from "./find-disc";
import { findRule, type FoundRule } from "./find-rule";
import { planeOf } from "./plane";
import { straightEdges } from "./straight-edges";

/** A thing of known size seen on a photo; how large a disc is only a person knows. Photo pixels. */
export type SeenScale =
  | ({ readonly kind: "strip" } & FoundStrip)
  | ({ readonly kind: "card" } & FoundCard)
  | ({ readonly kind: "rule" } & FoundRule)
  | ({ readonly kind: "disc" } & FoundDisc)
  /** A rule that the camera looks at too much from the side: no scale is made of it. */
  | { readonly kind: "tilted-rule" };

/** Straight edges are looked for in a picture no larger than this. */
const SEARCH_PX = 900;
/** The steepest of all pixels that count as edges. */
const EDGES = 0.12;
/** The shortest straight edge that counts, in longer sides of the picture, and how many are looked at. */
const LEAST_EDGE = 0.15;
const MOST_EDGES = 40;

/**
 * Looks without a click for something of known size, the surest first: the printed strip; a card, whose four edges take
 * the camera's tilt out; a rule by its lines; a disc. Null where nothing is plain: a scale that may be wrong is none.
 * Of a strip that is there and refused nothing else is made, for its printed lines are no rule. Pure.
 */
export function seenScale(image: RgbaImage): SeenScale | null {
  const strip = findStrip(image);
  if (strip.ok) return { kind: "strip", ...strip.value };
  if (strip.issues.some(({ code }) => code !== "strip-not-found")) return null;
  const small = planeOf(image, SEARCH_PX);
  const longest = Math.max(small.width, small.height);
  const reach = Math.hypot(small.width, small.height);
  const edges = straightEdges(edgePoints(small, EDGES), reach, LEAST_EDGE * longest, MOST_EDGES);
  const card = findCard(image, edges, small.block);
  if (card !== null) return { kind: "card", ...card };
  const rule = findRule(image, edges, small.block);
  if (rule !== null && rule !== "tilted") return { kind: "rule", ...rule };
  const disc = findDisc(image);
  if (disc !== null) return { kind: "disc", ...disc };
  return rule && { kind: "tilted-rule" };
}
