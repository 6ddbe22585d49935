/** `npm run kills -- 300 SEED`: so many hard kills at random moments of writing, and what they left. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { cutOffAtRandom, cutOffGround } from "./cut-off";
import { killAtRandom, killGround } from "./kills";

const [count = "30", given] = process.argv.slice(2);
const moments = Number(count);
if (!(Number.isInteger(moments) && moments > 0)) {
  console.log(
    `npm run -s kills -- 300 SEED     takes a writing process at 300 random moments and looks what is lost: each fourth is a
                                 SIGKILL, the others freeze it and take its folder as a kill would leave it; a tenth each
                                 while a folder of an earlier version is brought up to date, and while a backup is`,
  );
  process.exit(count === "--help" ? 0 : 2);
}
/** Of ten moments one while a folder is brought up to date, one while a backup is brought back. */
const other = Math.floor(moments / 10);
const writing = moments - 2 * other;
const seed = given === undefined ? Math.floor(Math.random() * 1e9) : Number(given);
const work = mkdtempSync(path.join(tmpdir(), "toeline-kills-"));
const onLife = (done: number, wrong: number) =>
  process.stderr.write(`\r${done} of ${writing} moments of writing, ${wrong} findings `);
try {
  const ground = await killGround(work, 6);
  const {
    wrong: found,
    during,
    ...counts
  } = await killAtRandom(ground, { seed, moments: writing, killEvery: 4, onLife });
  const cuts = await cutOffGround(work);
  const cut = async (deed: "migrate" | "restore") => cutOffAtRandom(cuts, { deed, seed, moments: other });
  const wrong = [...found, ...(await cut("migrate")), ...(await cut("restore"))];
  console.log(
    `Seed ${seed}. ${counts.kills} kills and ${counts.frozen} frozen moments, ${counts.acknowledged} acknowledged writes, ${counts.strays} strays collected.`,
  );
  console.log(
    `Besides ${other} moments each while a folder of before is brought up to date, and while a backup is brought back.`,
  );
  console.log(
    `Under way: ${Object.entries(during)
      .map(([deed, times]) => `${deed} ${times}`)
      .join(", ")}.`,
  );
  for (const one of wrong) console.log(`- ${one}`);
  console.log(wrong.length === 0 ? "Nothing is lost, nothing is half." : `${wrong.length} findings.`);
  process.exitCode = wrong.length === 0 ? 0 : 1;
} finally {
  rmSync(work, { recursive: true, force: true });
}
