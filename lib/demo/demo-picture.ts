import { createReadStream } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import path from "node:path";
import { addPhoto, attachPhoto } from "@/lib/beads";
import { photoSentence } from "@/lib/photo";
import { recordSentence, type Pen } from "@/lib/store";
import { DemoTruthSchema, type DemoTruth } from "./drawing";

/** Where the pictures of the demo lie, from the folder the program runs in: a bundled page knows no other place. */
export const set = path.join(process.cwd(), "demo-images", "set");

export interface Store {
  readonly pen: Pen;
  readonly dataDir: string;
}

/** What the generator says of a picture. */
export async function demoTruth(picture: string): Promise<DemoTruth> {
  return DemoTruthSchema.parse(JSON.parse(await readFile(path.join(set, `${picture}.json`), "utf8")));
}

/** The picture's id on the bead. */
export async function addDemoPhoto({ pen, dataDir }: Store, beadId: string, name: string): Promise<string> {
  const file = path.join(set, `${name}.jpg`);
  const arriving = {
    dataDir,
    source: createReadStream(file),
    declaredBytes: (await stat(file)).size,
  };
  const taken = await attachPhoto(pen.db, arriving, (photo) => addPhoto(pen, beadId, photo, "face"));
  if (taken.ok) return taken.value.record.id;
  throw new Error(
    (taken.from === "photo" ? taken.issues.map(photoSentence) : taken.issues.map(recordSentence)).join(" "),
  );
}
