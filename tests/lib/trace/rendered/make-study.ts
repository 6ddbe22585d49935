import { writeFileSync } from "node:fs";
import { nodeReader } from "../node-reader";
import type { PictureKind } from "./pictures";
import { studyPicture } from "./study-picture";

/** `make-study OUT PART PARTS KIND FROM TO`: every PARTS-th picture of a kind, a line of JSON each. */
const [out, part, parts, kind, from, to] = process.argv.slice(2);
const read = await nodeReader();
const lines: string[] = [];
for (let n = Number(from) + Number(part); n < Number(to); n += Number(parts)) {
  const studied = await studyPicture(kind as PictureKind, n, read);
  if (studied !== null) lines.push(JSON.stringify(studied));
}
writeFileSync(out!, lines.map((line) => `${line}\n`).join(""));
