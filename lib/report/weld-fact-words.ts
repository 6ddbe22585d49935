import type { WeldFactName } from "@/lib/accept";
import type { Seam } from "@/lib/assess";

/** What a code asks about the weld, as it is put to a person. */
export const weldFactWords: Readonly<Record<WeldFactName, string>> = {
  singleSided: "Welded from one side only?",
  completePenetration: "Complete joint penetration asked for?",
  transverseToTension: "Lies across the tensile stress?",
  stiffenerToWeb: "Joins a stiffener to a web?",
  alongLapEdge: "Runs along the edge of the lapped plate?",
  seam: "Which seam is it?",
  rootWidthMm: "Width of the root on the back",
  closed: "Goes all the way round and closes on itself?",
};

export const seamWords: Readonly<Record<Seam, string>> = {
  plate: "Between plates",
  longitudinal: "Along a pipe or vessel",
  girth: "Round a pipe or vessel",
  branch: "Branch on a pipe",
};
