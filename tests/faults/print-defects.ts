/** `npm run -s defects`: puts each known defect back into a copy of the sources and looks whether its test fails. */
import { rmSync } from "node:fs";
import { defects } from "./defects";
import { putBack, runSound, scratchCopy } from "./put-back";

const words = process.argv.slice(2);
if (words.includes("--help")) {
  console.log(
    `npm run -s defects             all of them, some seconds each
npm run -s defects -- WORD ... those whose name holds one of these`,
  );
  process.exit(0);
}
const wanted = defects.filter(({ id }) => words.length === 0 || words.some((word) => id.includes(word)));
const scratch = scratchCopy();
let wrong = 0;
try {
  const sound = runSound(scratch, wanted);
  console.log(
    `Without any: ${sound.passed} tests green, ${sound.failed} red, ${sound.seconds.toFixed(0)} s.`,
  );
  if (sound.failed > 0) {
    wrong += 1;
    console.log(`So nothing can be said: ${sound.why}`);
  }
  for (const defect of wrong > 0 ? [] : wanted) {
    const { failed, passed, seconds } = putBack(scratch, defect);
    wrong += failed > 0 ? 0 : 1;
    const seen = failed > 0 ? `${failed} red` : `NOT SEEN, ${passed} green`;
    console.log(`${seen.padEnd(8)} ${seconds.toFixed(1).padStart(6)} s  ${defect.id} -> ${defect.test.file}`);
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
console.log(
  wrong === 0 ? `${wanted.length} defects put back, each found.` : `${wrong} of ${wanted.length} not found.`,
);
process.exitCode = wrong === 0 ? 0 : 1;
