import type { WeldKind } from "@/lib/accept";
import { isFillet, type Joint } from "@/lib/trade";

/** A joint nobody named is judged as a surfacing weld: the rules of fillet and butt need to know which it is. */
export function weldKind(joint: Joint | null): WeldKind {
  if (joint === null || joint === "bead-on-plate" || joint === "stringer-pad") return "surfacing";
  return isFillet(joint) ? "fillet" : "butt";
}
