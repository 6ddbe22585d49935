import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { encodePicture } from "./encode";
import { renderSceneOnThreads } from "./render-scene";
import { scenarioNames } from "./scenarios";

/** Renders the demo set into demo-images/set; names given as arguments limit it to those. */
const folder = fileURLToPath(new URL("./set", import.meta.url));
const SEED = 7;
const quality = 88;
const wanted = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
for (const scenario of scenarioNames) {
  if (wanted.length > 0 && !wanted.includes(scenario)) continue;
  const rendered = await renderSceneOnThreads({ scenario, seed: SEED, megapixels: 2.4 }, 2);
  const bytes = await encodePicture(rendered, { quality, orientation: 1 });
  writeFileSync(join(folder, `${scenario}.jpg`), bytes);
  writeFileSync(join(folder, `${scenario}.json`), `${JSON.stringify(rendered.truth)}\n`);
  process.stdout.write(`${scenario} ${Math.round(bytes.length / 1000)} kB\n`);
}
