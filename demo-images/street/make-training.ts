import { mkdirSync, openSync, writeFileSync, writeSync } from "node:fs";
import { join } from "node:path";
import { renderScene } from "../render-scene";
import { createRandom, mixSeed } from "../noise/random";
import type { ScenarioName } from "../scenarios";
import { keptBackScenarios, streetParams, streetScene, trainingScenarios } from "./street-scene";

/**
 * Pictures to train a reader on, with their truth: `make-training OUT PART PARTS COUNT KIND SEED [SECONDS]`. PART of PARTS
 * makes every PARTS-th picture; `KIND` is train, kept-street or kept-plain. Pixels go to OUT/KIND-PART.rgb one after the
 * other, one line of truth each to OUT/KIND-PART.jsonl. After SECONDS it stops, with whole pictures only.
 */
const [out, partText, partsText, countText, kind, seedText, secondsText] = process.argv.slice(2);
const [part, parts, count, base] = [partText, partsText, countText, seedText].map(Number) as [
  number,
  number,
  number,
  number,
];
const until = performance.now() + 1000 * Number(secondsText ?? 1e6);
mkdirSync(out!, { recursive: true });
const pixels = openSync(join(out!, `${kind}-${part}.rgb`), "w");
const truths: string[] = [];
const names: readonly ScenarioName[] = kind === "train" ? trainingScenarios : keptBackScenarios;
for (let n = part; n < count && performance.now() < until; n += parts) {
  const seed = mixSeed(base, n) % 2147483647;
  const scenario = names[n % names.length]!;
  const plain = kind === "kept-plain" || (kind === "train" && createRandom(seed).chance(0.08));
  try {
    const picture = plain
      ? renderScene({ scenario, seed, megapixels: 0.6 })
      : renderScene(streetParams(scenario, seed, 0.6), (spec) => streetScene(spec, mixSeed(seed, 24)));
    writeSync(pixels, picture.rgb);
    const { weld, imperfections, widthPx, heightPx, before = [] } = picture.truth;
    const { leftToePx, rightToePx } = weld;
    const marks = imperfections.map((mark) => [mark.kind, mark.outlinePx]);
    // What the demo's own scenes hold besides is not told apart: those pictures count as having more than one bead.
    const beads = plain ? 2 : 1 + before.length;
    truths.push(
      JSON.stringify({
        scenario,
        seed,
        plain,
        beads,
        before,
        widthPx,
        heightPx,
        leftToePx,
        rightToePx,
        marks,
      }),
    );
  } catch (error) {
    process.stderr.write(`${scenario} ${seed}: ${String(error)}\n`);
  }
  writeFileSync(join(out!, `${kind}-${part}.jsonl`), `${truths.join("\n")}\n`);
}
