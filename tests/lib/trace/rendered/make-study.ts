import { writeFileSync } from "node:fs";
import { nodeFinder, nodeReader } from "../node-reader";
import { pictureKinds, type PictureKind } from "./pictures";
import { spoiltAnswer, type SpoiltKind } from "./spoilt";
import { studyPicture } from "./study-picture";

/** `make-study OUT PART PARTS KIND FROM TO`: every PARTS-th picture of a kind, a line of JSON each. */
const [out, part, parts, kind, from, to] = process.argv.slice(2);
const [read, readWhole] = [await nodeReader(), await nodeFinder()];
const isPicture = (pictureKinds as readonly string[]).includes(kind!);
const lines: string[] = [];
for (let n = Number(from) + Number(part); n < Number(to); n += Number(parts)) {
  const studied = isPicture
    ? await studyPicture(kind as PictureKind, n, read, readWhole)
    : await spoiltAnswer(kind as SpoiltKind, n, readWhole, read);
  if (studied !== null) lines.push(JSON.stringify(studied));
  writeFileSync(out!, lines.map((line) => `${line}\n`).join(""));
}
