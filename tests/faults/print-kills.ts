/** `npm run kills -- 300 SEED`: so many hard kills at random moments of writing, and what they left. */
import { mkdtempSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import path from "node:path";
import { cutOffAtRandom, cutOffGround } from "./cut-off";
import { killAtRandom, killGround, type Phase, type PhaseCounts } from "./kills";

const [count = "30", given] = process.argv.slice(2);
const moments = Number(count);
if (!(Number.isInteger(moments) && moments > 0)) {
  console.log(
    `npm run -s kills -- 300 SEED     takes a process at 300 random moments and looks what is lost: every deed in turn (make, save,
                                 upload, sign, import, back up), a tenth each while a folder of an earlier version is brought
                                 up to date, and while a backup is. Each fifth is a SIGKILL, the others freeze the process
                                 and take its folder as a kill would leave it.`,
  );
  process.exit(count === "--help" ? 0 : 2);
}

const KILL_EVERY = 5;
const names: Readonly<Record<Phase, string>> = {
  photo: "upload",
  make: "make a bead",
  save: "save",
  sign: "sign",
  import: "import",
  backup: "back up",
  migrate: "migrate",
  restore: "restore",
  nothing: "between two",
};
const phases = Object.keys(names) as Phase[];

function printPhases(during: PhaseCounts): void {
  console.log("while it was to …   moments   killed   frozen   findings");
  for (const phase of phases) {
    const { kills = 0, frozen = 0, wrong = 0 } = during[phase] ?? {};
    const cells = [kills + frozen, kills, frozen, wrong].map((value, i) =>
      String(value).padStart([7, 9, 9, 11][i]!),
    );
    console.log(`${names[phase].padEnd(20)}${cells.join("")}`);
  }
}

/** Of ten moments one while a folder is brought up to date, one while a backup is brought back. */
const other = Math.floor(moments / 10);
const writing = moments - 2 * other;
const seed = given === undefined ? Math.floor(Math.random() * 1e9) : Number(given);
const work = mkdtempSync(path.join(tmpdir(), "toeline-kills-"));
const [began, load] = [performance.now(), loadavg()[0]!];
const onLife = (done: number, wrong: number) =>
  process.stderr.write(`\r${done} of ${writing} moments of writing, ${wrong} findings `);
try {
  const ground = await killGround(work, KILL_EVERY);
  const counts = await killAtRandom(ground, { seed, moments: writing, killEvery: KILL_EVERY, onLife });
  const { during } = counts;
  const wrong = [...counts.wrong];
  const cuts = other === 0 ? null : await cutOffGround(work);
  for (const deed of ["migrate", "restore"] as const)
    if (cuts) wrong.push(...(await cutOffAtRandom(cuts, { deed, seed, moments: other, during })));
  process.stderr.write("\r");
  printPhases(during);
  const missed = phases.filter((phase) => phase !== "nothing" && during[phase] === undefined);
  const seconds = Math.round((performance.now() - began) / 1000);
  console.log(
    `Seed ${seed}, ${moments} moments in ${seconds} s (the machine's load ${load.toFixed(1)} at first), ${counts.acknowledged} acknowledged writes, ${counts.strays} strays collected.`,
  );
  if (missed.length > 0) console.log(`Never met: ${missed.map((phase) => names[phase]).join(", ")}.`);
  for (const one of wrong) console.log(`- ${one}`);
  console.log(wrong.length === 0 ? "Nothing is lost, nothing is half." : `${wrong.length} findings.`);
  process.exitCode = wrong.length === 0 && (missed.length === 0 || moments < 30) ? 0 : 1;
} finally {
  rmSync(work, { recursive: true, force: true });
}
