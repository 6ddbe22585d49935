import { mkdirSync, openSync, writeFileSync, writeSync } from "node:fs";
import { join } from "node:path";
import { mixSeed } from "../noise/random";
import { renderScene } from "../render-scene";
import { spotPicture } from "./spot-picture";
import { spotsOf } from "./spots-of";
import { trainingScenarios } from "./street-scene";

/**
 * Pictures to train the finder of holes and spatter on: `make-spots OUT PART PARTS COUNT SEED [SECONDS]`. Pixels go to
 * OUT/spots-PART.rgb one after the other, one line of truth each to OUT/spots-PART.jsonl.
 */
const [out, ...numbers] = process.argv.slice(2);
const [part, parts, count, base, seconds = 1e6] = numbers.map(Number) as [
  number,
  number,
  number,
  number,
  number?,
];
const MEGAPIXELS = 0.4;
const until = performance.now() + 1000 * seconds;
mkdirSync(out!, { recursive: true });
const pixels = openSync(join(out!, `spots-${part}.rgb`), "w");
const truths: string[] = [];
for (let n = part; n < count && performance.now() < until; n += parts) {
  const scenario = trainingScenarios[n % trainingScenarios.length]!;
  const seed = mixSeed(base, n) % 2147483647;
  try {
    const [params, alter] = spotPicture(scenario, seed, MEGAPIXELS);
    const { rgb, truth } = renderScene(params, alter);
    writeSync(pixels, rgb);
    const { widthPx, heightPx, weld } = truth;
    const { leftToePx, rightToePx } = weld;
    const spots = spotsOf(truth).map(({ kind, x, y, radiusPx }) => [kind === "hole" ? 0 : 1, x, y, radiusPx]);
    truths.push(JSON.stringify({ scenario, seed, widthPx, heightPx, leftToePx, rightToePx, spots }));
  } catch (error) {
    process.stderr.write(`${scenario} ${seed}: ${String(error)}\n`);
  }
  writeFileSync(join(out!, `spots-${part}.jsonl`), `${truths.join("\n")}\n`);
}
