/**
 * `npm run -s sweep -- [EVERY] [SEED]`: walks every EVERYth set-up of the grid (all of them unless told) and prints what
 * the laws of the one change found. Ends with 1 where one is broken.
 */
import { sweep } from "./broken-advice";
import { grid } from "./grid";

const [every = 1, seed = 2026] = process.argv.slice(2).map(Number);
const { beads, proposals, broken, worstStep, worstJump, worstJumpAt } = sweep(every, seed, undefined, 2);
console.log(
  `${grid().length} set-ups in the grid, ${beads} beads (seed ${seed}), ${proposals} changes, ${broken.length} broken; ` +
    `worst step ${worstStep.toFixed(3)}, worst jump ${worstJump.toFixed(3)} of the reading`,
);
if (worstJump > 0.05) console.log(`jump: ${worstJumpAt}`);
for (const line of broken.slice(0, 10)) console.log(line);
process.exitCode = broken.length > 0 || worstJump > 0.05 ? 1 : 0;
