import type { Quantity } from "@/lib/measure";
import type { ImperfectionId, Pattern } from "@/lib/trade";
import type { SizeName } from "./rule";
import type { Observation } from "./types";

export interface SizeRead {
  /** null: nothing was read. */
  readonly quantity: Quantity | null;
  /** The size that tells was read. Without it the figure is a least one: enough to fail, never to meet. */
  readonly whole: boolean;
  /** Which size is wanted. */
  readonly wanted: SizeName;
  /** As in `figuresUsed`: "o1.depth". */
  readonly figures: readonly string[];
}

/** Long holes are told by their length, everything else that is given either way by the other size. */
const byLength: ReadonlySet<ImperfectionId> = new Set(["wormhole"]);
/** Metal that stands above a surface is told by its height; all else in a cross section by its depth. */
const byHeight: ReadonlySet<ImperfectionId> = new Set([
  "overlap",
  "excess-penetration",
  "convex-bead",
  "misalignment",
]);

/**
 * Size of one imperfection out of those a rule may go by: the one that tells for this imperfection. Where that was not
 * read, the greatest of the others is a least figure, so that a size taken away never makes it look smaller.
 */
export function sizeOf(observation: Observation, sizes: readonly SizeName[]): SizeRead {
  const wanted = wantedOf(observation.imperfection, sizes);
  const tells = observation[`${wanted}Mm`];
  // Off the photo a patch has the diameter of its outline, which is no pore's.
  const isOutline = isPatch(observation) && wanted === "diameter" && tells?.source === "photo";
  if (isOutline) return { quantity: null, whole: false, wanted, figures: [] };
  if (tells !== null)
    return { quantity: tells, whole: true, wanted, figures: [`${observation.id}.${wanted}`] };
  const others = sizes.flatMap((size) => {
    const quantity = observation[`${size}Mm`];
    return quantity === null ? [] : [{ size, quantity }];
  });
  const [greatest] = [...others].sort((a, b) => b.quantity.value - a.quantity.value);
  return {
    quantity: greatest?.quantity ?? null,
    whole: false,
    wanted,
    figures: others.map(({ size }) => `${observation.id}.${size}`),
  };
}

function wantedOf(imperfection: ImperfectionId, sizes: readonly SizeName[]): SizeName {
  const offered = (size: SizeName): boolean => sizes.includes(size);
  if (offered("diameter") && offered("length")) return byLength.has(imperfection) ? "length" : "diameter";
  if (offered("depth") && offered("height")) return byHeight.has(imperfection) ? "height" : "depth";
  return sizes[0]!;
}

/** Said of pores, they make one mark a patch of many. */
export const patchPatterns: ReadonlySet<Pattern> = new Set([
  "clustered",
  "scattered",
  "in-line",
  "herringbone",
]);

/** One mark for many pores: its outline is the patch's, and its diameter that of the largest pore in it. */
export function isPatch({ imperfection, patterns }: Observation): boolean {
  return imperfection === "surface-porosity" && patterns.some((pattern) => patchPatterns.has(pattern));
}
