import { mixSeed } from "../noise/random";
import { renderScene } from "../render-scene";
import { looksOf, type StreetFigures } from "./looks-of";
import { streetParams, streetScene, trainingScenarios } from "./street-scene";

/** `npm run -s looks -- 22`: how plates look in the demo's scenes and in the street's, that many pictures of each. */
const count = Number(process.argv[2] ?? 22);
const quantile = (list: readonly number[], q: number): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(q * list.length))] ?? NaN;

const kinds = {
  "the demo's scenes": (n: number) =>
    renderScene({ scenario: trainingScenarios[n % trainingScenarios.length]!, seed: n + 1, megapixels: 0.6 }),
  "the street's scenes": (n: number) => {
    const scenario = trainingScenarios[n % trainingScenarios.length]!;
    return renderScene(streetParams(scenario, n + 1, 0.6), (spec) => streetScene(spec, mixSeed(n + 1, 24)));
  },
};

console.log(
  "| scenes | fine contrast | coarse contrast | blown, 90 % of pictures below | chroma of the bead |",
);
console.log("| --- | --- | --- | --- | --- |");
for (const [name, render] of Object.entries(kinds)) {
  const all = Array.from({ length: count }, (_, n) => looksOf(render(n))).filter((one) => one !== null);
  const middle = (pick: (one: StreetFigures) => number): string => quantile(all.map(pick), 0.5).toFixed(3);
  const blown = quantile(
    all.map((one) => one.blown),
    0.9,
  );
  console.log(
    `| ${name} (${all.length}) | ${middle((o) => o.fine)} | ${middle((o) => o.coarse)} | ${(100 * blown).toFixed(1)} % | ${quantile(
      all.map((o) => o.chroma),
      0.5,
    ).toFixed(1)} |`,
  );
}
