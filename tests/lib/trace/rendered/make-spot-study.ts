import { writeFileSync } from "node:fs";
import { nodeReader, nodeSpots } from "../node-reader";
import { classicalSpots } from "./classical-spots";
import { spotLine, type SpotLine } from "./spot-study";
import type { SpotKind } from "./spot-pictures";

/** `make-spot-study OUT PART PARTS KIND FROM TO [SECONDS]`: every PARTS-th picture of a kind, lines of JSON each. The classical way is slow: it looks at every third. */
const [out, part, parts, kind, from, to, seconds = "1e6"] = process.argv.slice(2);
const until = performance.now() + 1000 * Number(seconds);
const read = await nodeReader();
const network = await nodeSpots();
const lines: SpotLine[] = [];
for (let n = Number(from) + Number(part); n < Number(to) && performance.now() < until; n += Number(parts)) {
  const by = n % 3 === 0 ? { network, classical: classicalSpots } : { network };
  lines.push(...(await spotLine(kind as SpotKind, n, read, by)));
  writeFileSync(out!, lines.map((line) => `${JSON.stringify(line)}\n`).join(""));
}
