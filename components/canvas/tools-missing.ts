import type { PhotoSection } from "@/lib/assess";
import type { Drawing } from "@/lib/marks";
import { edgeRolesOf } from "@/lib/section";
import type { Tool } from "./types";

/** Tools whose job is not done yet: each carries a dot in the bar. A butt needs no root point. */
export function toolsMissing({ scale, weldLine }: Drawing, section: PhotoSection | null): ReadonlySet<Tool> {
  const missing = new Set<Tool>();
  if (scale === null) missing.add("scale");
  if (weldLine === null) missing.add("weld-line");
  if (section === null) return missing;
  if (section.outline === null) missing.add("metal");
  if (edgeRolesOf[section.joint].length > section.edges.length) missing.add("edge");
  if (section.joint === "fillet" && section.root === null) missing.add("root");
  return missing;
}
