import { existsSync, readFileSync } from "node:fs";
import { nodeReader, nodeSpots } from "../node-reader";
import { classicalSpots } from "./classical-spots";
import { spotKinds } from "./spot-pictures";
import { spotLine, type SpotLine } from "./spot-study";
import { spotTables } from "./spot-tables";

/** Renders so many pictures of each kind and looks for holes and spatter; or prints what `make-spot-study` wrote. */
export async function printSpotStudy([word = "12"]: readonly string[]): Promise<void> {
  const today = new Date().toISOString().slice(0, 10);
  console.log(spotTables(existsSync(word) ? readLines(word) : await makeLines(Number(word)), today));
}

const readLines = (file: string): readonly SpotLine[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as SpotLine);

async function makeLines(pictures: number): Promise<readonly SpotLine[]> {
  const read = await nodeReader();
  const by = { network: await nodeSpots(), classical: classicalSpots };
  const lines: SpotLine[] = [];
  for (const kind of spotKinds)
    for (let n = 0; n < pictures; n++) lines.push(...(await spotLine(kind, n, read, by)));
  return lines;
}
