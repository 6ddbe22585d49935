import { shareOf } from "@/lib/trends";
import { oneAtATime, seeking, simulation, surfacing, type Ended } from "./simulated";

/**
 * Prints how often series of simulated beads with a known best end within a tenth of it, of what lies between best and
 * worst, and how many beads that costs: `npm run -s study:trials -- 400`.
 */
const series = Number(process.argv[2] ?? 400);
const seeds = Array.from({ length: series }, (_, i) => i + 1);

const percent = (share: number): string => (100 * share).toFixed(0);

function line(name: string, ends: readonly Ended[]): void {
  const near = ends.filter(({ short }) => short <= 0.1).length;
  const mean = ends.reduce((sum, { spent }) => sum + spent, 0) / ends.length;
  const { low, high } = shareOf(near, ends.length);
  const text = `${percent(near / ends.length)} % (${percent(low)} to ${percent(high)})`;
  console.log(`| ${name.padEnd(44)} | ${text.padEnd(27)} | ${mean.toFixed(1).padStart(5)} |`);
}

console.log(`${series} simulated series for each row.\n`);
console.log(`| ${"series".padEnd(44)} | ${"end within 10 % of the best".padEnd(27)} | beads |`);
console.log(`| ${"-".repeat(44)} | ${"-".repeat(27)} | ----- |`);
for (const knobs of [1, 2] as const) {
  const budget = knobs === 1 ? 8 : 14;
  for (const noise of [0.05, 0.1, 0.2]) {
    const of = (way: "seek" | "surface", seed: number) => simulation(knobs, way, seed, budget, noise);
    const name = `${knobs} knob${knobs > 1 ? "s" : ""}, scatter ${100 * noise} %`;
    line(
      `${name}: next point proposed`,
      seeds.map((seed) => seeking(of("seek", seed))),
    );
    line(
      `${name}: surface`,
      seeds.map((seed) => surfacing(of("surface", seed))),
    );
    line(
      `${name}: one knob at a time`,
      seeds.map((seed) => oneAtATime(of("seek", seed), budget)),
    );
  }
}
