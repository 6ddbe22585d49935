import { imperfections } from "@/lib/trade";
import type { LimitSymbol } from "./criteria";
import { sectionFigures } from "./figure-names";
import type { SectionMissing } from "./judgement";

const stated: Readonly<Record<LimitSymbol, string>> = {
  "specified-leg": "the leg the drawing asks for",
  "specified-throat": "the throat the drawing asks for",
  "plate-thickness": "the thickness of the thinner plate",
  "face-width": "the width of the face",
};

const name = (figure: keyof typeof sectionFigures): string => sectionFigures[figure].name.toLowerCase();

/** What would settle an open row, in one sentence. */
export function missingSentence(missing: SectionMissing): string {
  switch (missing.kind) {
    case "figure":
      return `Not read: ${name(missing.figure)}. Draw what it needs.`;
    case "stated":
      return `Say ${stated[missing.what]}.`;
    case "look": {
      const names = missing.imperfections.map((id) => imperfections[id].name.toLowerCase());
      return `Look for ${names.join(", ")}: mark what there is, or say that there is none.`;
    }
    case "size":
      return "A mark has no size yet. Draw it as a line across the section.";
    case "closer":
      return missing.figure === null
        ? "A mark is too near the limit for this photo. Measure it under a microscope."
        : `Too near the limit for this photo: ${name(missing.figure)}. Pick again zoomed in, or measure under a microscope.`;
    case "length-along":
      return "Allowed in short stretches only, and a section shows no length. Read it on the weld itself.";
  }
}
