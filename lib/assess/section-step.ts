import { edgeRolesOf, type SectionEdgeRole } from "@/lib/section";
import type { PhotoSection } from "./photo-section";

/** What is to be done next on a section, one thing at a time. */
export type SectionStep =
  | { readonly kind: "joint" | "scale" | "outline" | "root" }
  | { readonly kind: "edge"; readonly role: SectionEdgeRole };

/**
 * The first thing that is still missing; null when all is drawn. The scale comes first, because without one nothing has a
 * size; a butt needs no root point.
 */
export function nextSectionStep(section: PhotoSection | null, hasScale: boolean): SectionStep | null {
  if (section === null) return { kind: "joint" };
  if (!hasScale) return { kind: "scale" };
  if (section.outline === null) return { kind: "outline" };
  const role = edgeRolesOf[section.joint].find((one) => !section.edges.some((edge) => edge.role === one));
  if (role !== undefined) return { kind: "edge", role };
  return section.joint === "fillet" && section.root === null ? { kind: "root" } : null;
}
