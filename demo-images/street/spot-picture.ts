import { createRandom, mixSeed } from "../noise/random";
import type { RenderParamsInput } from "../params";
import type { AlterScene } from "../render-scene";
import type { ScenarioName } from "../scenarios";
import { spotScene } from "./spot-scene";
import { streetParams } from "./street-scene";

/** From how wide a bead to how wide, px: a phone held near, or a photo of all of a short bead. */
const BEAD_PX = [70, 260] as const;

/** What `renderScene` is to be given for one near picture with holes and spatter in it. */
export function spotPicture(
  scenario: ScenarioName,
  seed: number,
  megapixels: number,
): readonly [RenderParamsInput, AlterScene] {
  const params = streetParams(scenario, seed, megapixels);
  const random = createRandom(mixSeed(seed, 43));
  const beadPx = BEAD_PX[0] * (BEAD_PX[1] / BEAD_PX[0]) ** random.next();
  const widthPx = Math.sqrt((megapixels * 1e6 * 4) / 3);
  return [params, (spec) => spotScene(spec, seed, widthPx, beadPx)];
}
