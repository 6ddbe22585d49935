import { emptyBeadJudgement, type BeadContent } from "@/lib/assess";
import type { DemoBead } from "./beads";
import { demoDrawing, isSpatterLeftOut, type DemoTruth } from "./drawing";

/** What a careful person of the invented shop records of this bead, whose photo has this id. */
export function demoContent(bead: DemoBead, truth: DemoTruth, photoId: string): BeadContent {
  const drawing = demoDrawing(truth);
  const found = new Set(drawing.marks.map(({ imperfection }) => imperfection));
  const noSpatter = isSpatterLeftOut(truth);
  return {
    title: bead.title,
    welder: bead.welder,
    setup: { ...truth.setup, ...bead.setup },
    judgement: {
      ...emptyBeadJudgement,
      criteriaId: bead.criteriaId,
      lookedFor: bead.lookedFor.filter((one) => !found.has(one) && !(noSpatter && one === "spatter")),
      note: bead.note,
      tried: bead.after?.tried ?? null,
      outcome: bead.after?.outcome ?? null,
    },
    photos: [{ id: photoId, role: "face", drawing }],
  };
}
