import { mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { encodePicture } from "../encode";
import { createRandom, mixSeed } from "../noise/random";
import { renderScene } from "../render-scene";
import type { ScenarioName } from "../scenarios";
import { scenarioNames } from "../scenarios";
import { streetParams, streetScene } from "../street/street-scene";
import type { ImperfectionTruth, Truth } from "../truth";

/**
 * Beads for the training of the eye, with what is on them: `make-pool OUT COUNT SEED LOOK`. LOOK is plain or street. Each
 * picture ID.jpg lies there before its ID.json, so that whoever finds the truth finds the picture.
 */
const [out = "", countText, seedText, look] = process.argv.slice(2);
/** Three quarters of a megapixel: what a phone shows. */
const MEGAPIXELS = 0.75;
/** Scenarios that show no run weld from above. */
const left: readonly ScenarioName[] = ["root-side"].filter((name): name is ScenarioName =>
  (scenarioNames as readonly string[]).includes(name),
);
const names = scenarioNames.filter((name) => !left.includes(name));

/** At most so many points an outline: a finger is no finer. */
function thinned(outline: ImperfectionTruth["outlinePx"]): readonly (readonly [number, number])[] {
  const step = Math.max(1, Math.ceil(outline.length / 60));
  return outline
    .filter((_, i) => i % step === 0)
    .map(([x, y]) => [Math.round(x * 10) / 10, Math.round(y * 10) / 10] as const);
}

function beadOf(id: string, scenario: string, { widthPx, heightPx, setup, weld, imperfections }: Truth) {
  const seen = imperfections.filter(({ outlinePx }) =>
    outlinePx.some(([x, y]) => x >= 0 && y >= 0 && x < widthPx && y < heightPx),
  );
  const { joint, thicknessMm } = setup;
  return {
    id,
    scenario,
    look,
    widthPx,
    heightPx,
    joint,
    thicknessMm,
    lengthMm: weld.lengthMm,
    faults: seen.slice(0, 400).map(({ kind, place, stretch, outlinePx, sizes, alongMm }) => ({
      kind,
      place,
      whole: stretch === "whole-length",
      outlinePx: thinned(outlinePx),
      sizes,
      alongMm,
    })),
  };
}

mkdirSync(out, { recursive: true });
for (let n = 0; n < Number(countText); n += 1) {
  const seed = mixSeed(Number(seedText), n) % 2147483647;
  const scenario = names[Math.floor(names.length * createRandom(seed).next())]!;
  // No word of what is on it: the id stands in the picture's address.
  const id = `${look}-${seed.toString(36)}`;
  try {
    const picture =
      look === "street"
        ? renderScene(streetParams(scenario, seed, MEGAPIXELS), (spec) =>
            streetScene(spec, mixSeed(seed, 24)),
          )
        : renderScene({ scenario, seed, megapixels: MEGAPIXELS });
    const jpeg = await encodePicture(picture, { quality: 84, orientation: 1 });
    writeFileSync(join(out, `${id}.jpg`), jpeg, { mode: 0o600 });
    writeFileSync(join(out, `${id}.part`), JSON.stringify(beadOf(id, scenario, picture.truth)), {
      mode: 0o600,
    });
    renameSync(join(out, `${id}.part`), join(out, `${id}.json`));
  } catch (error) {
    // A street where the scale finds no place beside the bead is drawn again under another seed.
    rmSync(join(out, `${id}.jpg`), { force: true });
    process.stderr.write(`${id}: ${String(error)}\n`);
  }
}
