import { kinds, median, study } from "./study";

/**
 * The full-size coverage study as a table: `npx tsx tests/lib/measure/print-study.ts [photographs per kind]`.
 * Simulated photographs with known truth; see study.ts for what is drawn from which distribution.
 */
const photos = Number(process.argv[2] ?? 400);
if (!Number.isInteger(photos) || photos < 10) {
  console.error("photographs per kind: a whole number from 10 up");
  process.exitCode = 2;
} else {
  console.log(
    "| scale | pick error | photographs | truth inside U (k = 2) | bias mm | spread mm | median error mm |",
  );
  console.log("| --- | --- | --- | --- | --- | --- | --- |");
  for (const factor of [1, 2])
    for (const kind of kinds) {
      const { inside, errors } = study(kind, photos, factor, 20261125);
      const mean = errors.reduce((sum, one) => sum + one, 0) / errors.length;
      const spread = Math.sqrt(errors.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (errors.length - 1));
      const figures = [mean, spread, median(errors.map(Math.abs))].map((one) => one.toFixed(3));
      console.log(
        `| ${kind} | ${factor === 1 ? "as stated" : "doubled"} | ${photos} | ${(100 * inside).toFixed(1)} % | ${figures.join(" | ")} |`,
      );
    }
}
