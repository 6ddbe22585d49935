import { issue } from "@/lib/base";
import { crossesItself } from "@/lib/geometry";
import { edgeRolesOf, type SectionDrawing, type SectionEdgeRole } from "./drawing";
import type { SectionIssue } from "./types";

/** What is missing in a drawing, and what contradicts itself in it. */
export function missingFrom(drawing: SectionDrawing, thicknessKnown: boolean): readonly SectionIssue[] {
  const has = (role: SectionEdgeRole): boolean => drawing.edges.some((edge) => edge.role === role);
  const roles = edgeRolesOf[drawing.joint];
  return [
    ...(drawing.outline === null ? [issue("draw-outline" as const, ["outline"])] : []),
    ...roles.filter((role) => !has(role)).map((role) => issue("draw-edge" as const, ["edges"], { role })),
    ...(drawing.root === null && drawing.joint === "fillet" ? [issue("mark-root" as const, ["root"])] : []),
    ...(drawing.joint === "butt" && !has("back") && !thicknessKnown
      ? [issue("no-thickness" as const, ["edges"])]
      : []),
  ];
}

/** What stops everything: read by nobody before it is put right. */
export function wrongIn(drawing: SectionDrawing): readonly SectionIssue[] {
  const roles = drawing.edges.map(({ role }) => role);
  return [
    ...roles.flatMap((role, i) =>
      roles.indexOf(role) < i ? [issue("edge-twice" as const, ["edges", i], { role })] : [],
    ),
    ...roles.flatMap((role, i) =>
      edgeRolesOf[drawing.joint].includes(role)
        ? []
        : [issue("edge-of-other-joint" as const, ["edges", i], { role })],
    ),
    ...(drawing.outline !== null && crossesItself(drawing.outline)
      ? [issue("outline-crosses-itself" as const, ["outline"])]
      : []),
  ];
}
