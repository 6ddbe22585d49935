import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { encodePicture } from "./encode";
import { demoSections, renderMacro } from "./macro/render-macro";
import { renderSceneOnThreads } from "./render-scene";
import { scenarioNames, type ScenarioName } from "./scenarios";

/** Renders the demo set into demo-images/set and demo-images/sections; names given as arguments limit it to those. */
const folderOf = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const SEED = 7;
const quality = 88;
/** The later scenes are kept smaller: the set is part of every copy of this project. */
const MEGAPIXELS = 2.4;
const SMALL_MEGAPIXELS = 1.6;
const small: readonly ScenarioName[] = [
  "tee-sagging",
  "stringer-burnback",
  "tee-toe-crack-short",
  "butt-tool-marks",
  "hard-cracks",
  "tig-butt-pulled",
];
const wanted = process.argv.slice(2);
const isWanted = (name: string): boolean => wanted.length === 0 || wanted.includes(name);

async function store(
  folder: string,
  scenario: string,
  rendered: Parameters<typeof encodePicture>[0] & { readonly truth: unknown },
): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const bytes = await encodePicture(rendered, { quality, orientation: 1 });
  writeFileSync(join(folder, `${scenario}.jpg`), bytes);
  writeFileSync(join(folder, `${scenario}.json`), `${JSON.stringify(rendered.truth)}\n`);
  process.stdout.write(`${scenario} ${Math.round(bytes.length / 1000)} kB\n`);
}

for (const scenario of scenarioNames.filter(isWanted)) {
  const megapixels = small.includes(scenario) ? SMALL_MEGAPIXELS : MEGAPIXELS;
  const rendered = await renderSceneOnThreads({ scenario, seed: SEED, megapixels }, 2);
  await store(folderOf("./set"), scenario, rendered);
}
for (const params of demoSections.filter(({ scenario }) => isWanted(scenario)))
  await store(folderOf("./sections"), params.scenario, renderMacro(params));
