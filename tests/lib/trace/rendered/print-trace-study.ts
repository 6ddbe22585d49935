import { existsSync, readFileSync } from "node:fs";
import { nodeReader } from "../node-reader";
import { pictureKinds } from "./pictures";
import { studyPicture, type StudiedPicture } from "./study-picture";
import { traceTables } from "./tables";

/** Renders, traces and prints; or prints what `make-study` wrote elsewhere, one picture a line. */
export async function printTraceStudy([word = "12"]: readonly string[]): Promise<void> {
  const today = new Date().toISOString().slice(0, 10);
  const studied = existsSync(word) ? readStudy(word) : await makeStudy(Number(word));
  console.log(traceTables(studied, today));
}

const readStudy = (file: string): readonly StudiedPicture[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as StudiedPicture);

async function makeStudy(pictures: number): Promise<readonly StudiedPicture[]> {
  const read = await nodeReader();
  const studied: StudiedPicture[] = [];
  for (const kind of pictureKinds)
    for (let n = 0; n < pictures; n++) {
      const one = await studyPicture(kind, n, read);
      if (one !== null) studied.push(one);
    }
  return studied;
}
