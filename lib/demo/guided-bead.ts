import { existsSync } from "node:fs";
import path from "node:path";
import { emptyBeadJudgement } from "@/lib/assess";
import { createBead, saveBead } from "@/lib/beads";
import { emptyDrawing } from "@/lib/marks";
import type { Pen } from "@/lib/store";
import { addDemoPhoto, demoTruth, set } from "./demo-picture";
import { made } from "./made";

/** Shows the printed strip, which is found without a click, and one plain fault along a toe. */
const PICTURE = "lap-cold-lap";

/** Whether the picture is there: an installation may have been put together without the demo's. */
export const canGuide = (): boolean => existsSync(path.join(set, `${PICTURE}.jpg`));

/**
 * A bead of the invented shop with its set-up and its photo, and nothing drawn on it: somebody's first bead, to be marked step
 * by step. It is theirs and no part of the demo: it goes as any bead goes. Says its id.
 */
export async function guidedBead(pen: Pen, dataDir: string, welderId: string | null): Promise<string> {
  const truth = await demoTruth(PICTURE);
  const { id, revision } = made(await createBead(pen, { title: "First bead, step by step", welderId }));
  const photo = await addDemoPhoto({ pen, dataDir }, id, PICTURE);
  made(
    await saveBead(pen, id, revision, {
      title: "First bead, step by step",
      welder: null,
      setup: truth.setup,
      judgement: emptyBeadJudgement,
      photos: [{ id: photo, role: "face", drawing: emptyDrawing }],
    }),
  );
  return id;
}
