import type { SectionEdgeRole } from "@/lib/section";

/** What an edge is called at its line and on its button. */
export const sectionEdgeWords: Readonly<Record<SectionEdgeRole, string>> = {
  "plate-1": "Plate 1",
  "plate-2": "Plate 2",
  face: "Face of the plates",
  back: "Back of the plates",
  "groove-1": "Joint face 1",
  "groove-2": "Joint face 2",
};

/** The same at its line on the photo, where there is little room. */
export const sectionEdgeTags: Readonly<Record<SectionEdgeRole, string>> = {
  "plate-1": "Plate 1",
  "plate-2": "Plate 2",
  face: "Face",
  back: "Back",
  "groove-1": "Joint 1",
  "groove-2": "Joint 2",
};

/** Where to tap for an edge. */
export const sectionEdgeSteps: Readonly<Record<SectionEdgeRole, string>> = {
  "plate-1": "Tap along the edge of plate 1: two points, far apart, clear of the weld.",
  "plate-2": "Tap along the edge of plate 2: two points, far apart, clear of the weld.",
  face: "Tap along the plates’ face, the side welded last: a point on either side of the weld.",
  back: "Tap along the plates’ back, the root side: a point on either side of the weld.",
  "groove-1":
    "Tap along the old joint face of plate 1, from face to back, if you know where it was. Then Done.",
  "groove-2":
    "Tap along the old joint face of plate 2, from face to back, if you know where it was. Then Done.",
};
