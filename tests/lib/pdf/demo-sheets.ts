import { readFile } from "node:fs/promises";
import sharp from "sharp";
import { assessBead, type AssessContext } from "@/lib/assess";
import { demoBeads, type DemoBead } from "@/lib/demo/beads";
import { demoTruth, set } from "@/lib/demo/demo-picture";
import { demoContent } from "@/lib/demo/demo-content";
import { sheetDocument, type SheetDocument } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";

export interface DemoSheet {
  readonly picture: string;
  readonly sheet: SheetDocument;
  /** As large as the sheet prints them; enough here to see where it lies. */
  readonly jpeg: Buffer;
}

/** The sheets of the demo's beads, as a first visitor prints them; `context` knows the invented shop's own limits. */
export async function demoSheets(
  units: UnitPreferences,
  context: AssessContext,
): Promise<readonly DemoSheet[]> {
  return Promise.all(demoBeads.map((bead, i) => demoSheet(bead, i + 1, units, context)));
}

async function demoSheet(bead: DemoBead, number: number, units: UnitPreferences, context: AssessContext) {
  const truth = await demoTruth(bead.picture);
  const picture = await readFile(`${set}/${bead.picture}.jpg`);
  const { width, height } = await sharp(picture).metadata();
  const content = demoContent(bead, truth, "p1");
  const photos = [
    { id: "p1", sha256: number.toString(16).padStart(64, "0"), widthPx: width, heightPx: height },
  ];
  const known = { id: `b${number}`, number, revision: 2, createdAt: "2026-11-25T08:00:00.000Z" };
  const sheet = sheetDocument(assessBead({ ...known, content, photos }, context), units);
  return {
    picture: bead.picture,
    sheet,
    jpeg: await sharp(picture).resize(1280, 1280, { fit: "inside" }).jpeg().toBuffer(),
  };
}
