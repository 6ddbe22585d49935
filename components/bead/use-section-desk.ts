"use client";

import { useMemo, useState } from "react";
import { markTools, sectionMarkTools, sectionTools, type SectionWork, type Tool } from "@/components/canvas";
import {
  editSection,
  nextSectionStep,
  sectionOf,
  type PhotoSection,
  type SectionAction,
  type SectionAssessment,
  type SectionStep,
} from "@/lib/assess";
import { edgeRolesOf, type SectionEdgeRole } from "@/lib/section";
import type { Joint } from "@/lib/trade";
import type { WorkPhoto } from "./work-state";

/** What a photo of a cut weld is worked on for: its sizes, or the imperfections in it. */
export type SectionJob = "section" | "marks";

export interface SectionDesk {
  readonly job: SectionJob;
  readonly setJob: (job: SectionJob) => void;
  readonly offered: readonly Tool[];
  /** Null while nobody has said which joint was cut, and on every other photo. */
  readonly section: PhotoSection | null;
  /** For the canvas. */
  readonly work: SectionWork | null;
  /** The edge that the edge tool draws. */
  readonly role: SectionEdgeRole;
  /** Takes up the tool of a step. */
  readonly take: (step: SectionStep) => void;
  /** What to go on with once the scale is set. */
  readonly toolAfterScale: Tool;
}

/** The tool that does a step; the joint is said, not drawn. */
export function toolOfStep(step: SectionStep | null): Tool {
  switch (step?.kind) {
    case "scale":
    case "edge":
    case "root":
      return step.kind;
    case "outline":
      return "metal";
    default:
      return "move";
  }
}

/** The edge to draw: the one picked, else the first still missing. */
export function edgeInHand(section: PhotoSection | null, picked: SectionEdgeRole | null): SectionEdgeRole {
  const roles = edgeRolesOf[section?.joint ?? "fillet"];
  if (picked && roles.includes(picked)) return picked;
  return roles.find((role) => !section?.edges.some((edge) => edge.role === role)) ?? roles[0]!;
}

/** Whether an action draws a part that was not there: then the next step is taken up by itself. */
export function beginsPart(section: PhotoSection, action: SectionAction): boolean {
  switch (action.type) {
    case "section.outline":
      return section.outline === null;
    case "section.edge":
      return !section.edges.some(({ role }) => role === action.role);
    case "section.root":
      return section.root === null;
    default:
      return false;
  }
}

interface SectionWorkplace {
  readonly photo: WorkPhoto;
  readonly joint: Joint | null;
  readonly found: SectionAssessment | null;
  readonly onSection: (action: SectionAction) => void;
  readonly onTool: (tool: Tool) => void;
}

/** What the board needs to know to work on a section: which tools, which edge, and what comes next by itself. */
export function useSectionDesk(place: SectionWorkplace): SectionDesk {
  const { photo, joint, found, onTool } = place;
  const [job, setJob] = useState<SectionJob>("section");
  const [picked, setPicked] = useState<SectionEdgeRole | null>(null);
  const { section: drawn, scale } = photo.history.present;
  // The same object as long as nothing changes: its picture is not painted anew.
  const section = useMemo(
    () => sectionOf({ role: photo.role, section: drawn ?? undefined }, joint),
    [photo.role, drawn, joint],
  );
  const role = edgeInHand(section, picked);
  const measured = job === "section" ? section : null;
  return {
    job,
    setJob,
    offered: offeredTools(photo, job, section),
    section,
    role,
    work: measured && {
      section: measured,
      // While the figures are still those of the drawing before, what was found lies elsewhere.
      places: found?.section === section ? (found?.measures.places ?? null) : null,
      role,
      onAction: (action) => {
        place.onSection(action);
        if (!beginsPart(measured, action)) return;
        setPicked(null);
        onTool(toolOfStep(nextSectionStep(editSection(measured, action), scale !== null)));
      },
    },
    take: (step) => {
      setPicked(step.kind === "edge" ? step.role : null);
      onTool(toolOfStep(step));
    },
    toolAfterScale: measured ? toolOfStep(nextSectionStep(measured, true)) : "move",
  };
}

function offeredTools({ role }: WorkPhoto, job: SectionJob, section: PhotoSection | null): readonly Tool[] {
  if (role !== "section") return markTools;
  if (job === "marks") return sectionMarkTools;
  return section === null ? ["move", "scale"] : sectionTools;
}
