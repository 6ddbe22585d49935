import { assertNever } from "@/lib/base";
import type { PhotoPoint } from "@/lib/marks";
import { edgeRolesOf, type SectionEdgeRole, type SectionJoint } from "@/lib/section";
import type { ImperfectionId } from "@/lib/trade";
import { PhotoSectionSchema, type PhotoSection } from "./photo-section";

/** One change to a section. Points are photo pixels of the upright original; null takes the part away. */
export type SectionAction =
  /** Edges that the other joint has no use for go with it. */
  | { readonly type: "section.joint"; readonly joint: SectionJoint }
  | { readonly type: "section.outline"; readonly points: readonly PhotoPoint[] | null }
  | {
      readonly type: "section.edge";
      readonly role: SectionEdgeRole;
      readonly points: readonly PhotoPoint[] | null;
    }
  | { readonly type: "section.root"; readonly at: PhotoPoint | null }
  /** 0: plate 1, or left on a butt. Null: to be found again. */
  | { readonly type: "section.toe"; readonly side: 0 | 1; readonly at: PhotoPoint | null }
  | { readonly type: "section.lookedFor"; readonly lookedFor: readonly ImperfectionId[] }
  | { readonly type: "section.throat"; readonly mm: number | null }
  | { readonly type: "section.report"; readonly field: string; readonly text: string };

/**
 * The section after one action. What its schema would refuse is not done; then, and where nothing changes, the very same
 * object comes back.
 */
export function editSection(section: PhotoSection, action: SectionAction): PhotoSection {
  const next = PhotoSectionSchema.safeParse(changed(section, action));
  if (!next.success || JSON.stringify(next.data) === JSON.stringify(section)) return section;
  return next.data;
}

function changed(section: PhotoSection, action: SectionAction): unknown {
  switch (action.type) {
    case "section.joint":
      return {
        ...section,
        joint: action.joint,
        edges: section.edges.filter(({ role }) => edgeRolesOf[action.joint].includes(role)),
      };
    case "section.outline":
      // Toes put by hand lie on the old outline.
      return action.points === null
        ? { ...section, outline: null, toes: [null, null] }
        : { ...section, outline: action.points };
    case "section.edge":
      return { ...section, edges: withEdge(section, action.role, action.points) };
    case "section.root":
      return { ...section, root: action.at };
    case "section.toe":
      return { ...section, toes: section.toes.with(action.side, action.at) };
    case "section.lookedFor":
      return { ...section, lookedFor: action.lookedFor };
    case "section.throat":
      return { ...section, askedThroatMm: action.mm };
    case "section.report":
      return { ...section, report: withText(section.report, action.field, action.text) };
    default:
      return assertNever(action);
  }
}

/** The edges in the order of their roles, so that drawing one again moves none of the others. */
function withEdge(
  { edges, joint }: PhotoSection,
  role: SectionEdgeRole,
  points: readonly PhotoPoint[] | null,
) {
  const drawn = new Map(edges.map((edge) => [edge.role, edge.points as readonly PhotoPoint[]]));
  if (points === null) drawn.delete(role);
  else drawn.set(role, points);
  return edgeRolesOf[joint].flatMap((one) => {
    const found = drawn.get(one);
    return found ? [{ role: one, points: found }] : [];
  });
}

/** An emptied field leaves nothing behind. */
function withText(report: PhotoSection["report"], field: string, text: string): PhotoSection["report"] {
  const { [field]: _, ...rest } = report;
  return text.trim() === "" ? rest : { ...rest, [field]: text };
}
