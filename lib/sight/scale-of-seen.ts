import type { Point } from "@/lib/geometry";
import type { PhotoPoint, Scale } from "@/lib/marks";
import { defaultMeasureOptions } from "@/lib/measure";
import type { FoundStrip } from "@/lib/strip";
import { ID1 } from "./card-quads";
import type { SeenScale } from "./seen-scale";

/** A scale, or the rim of a disc that waits for its diameter; one of both is null, or both are. */
export interface ScaleOfSeen {
  readonly scale: Scale | null;
  readonly rim: readonly PhotoPoint[] | null;
}

/**
 * In pixels `factor` times as fine. Each place is worth as much as a pick of the same scatter, so that the scale states
 * its own doubt.
 */
export function scaleOfSeen(seen: SeenScale, factor: number): ScaleOfSeen {
  if (seen.kind === "strip") return { scale: stripScale(seen, factor), rim: null };
  if (seen.kind === "tilted-rule") return { scale: null, rim: null };
  const sigmaPx = seen.kind === "disc" ? seen.offPx : seen.sigmaPx;
  const grainPx = Math.max(0.01, (sigmaPx * factor) / defaultMeasureOptions.pickSigmaPx);
  const place = ({ x, y }: Point<"photo">): PhotoPoint => ({ x: x * factor, y: y * factor, grainPx });
  switch (seen.kind) {
    case "card":
      return {
        scale: {
          kind: "edges",
          edges: seen.edges.map(([a, b]): [PhotoPoint, PhotoPoint] => [place(a), place(b)]),
          widthMm: ID1.longMm,
          heightMm: ID1.shortMm,
        },
        rim: null,
      };
    case "rule":
      return {
        scale: { kind: "two-points", a: place(seen.a), b: place(seen.b), lengthMm: seen.lengthMm },
        rim: null,
      };
    case "disc":
      return { scale: null, rim: seen.rim.map(place) };
  }
}

/** A found strip as a scale, in pixels `factor` times as fine. */
export function stripScale({ corners, cornerSigmaPx }: FoundStrip, factor: number): Scale {
  return {
    kind: "strip",
    corners: corners.map(({ x, y, xMm, yMm }) => ({ x: x * factor, y: y * factor, xMm, yMm })),
    cornerSigmaPx: cornerSigmaPx * factor,
    printFactor: 1,
  };
}
