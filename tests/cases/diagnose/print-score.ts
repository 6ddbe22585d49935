/**
 * Scores the diagnosis on published cases beside a plain look-up in the order of the wall table.
 * `npx tsx tests/cases/diagnose/print-score.ts [cases.json] [--each]`. Each case: given (input of the diagnosis), causes (the
 * source's, first = leading), ranked (false: the source does not rank, any of them is right).
 */
import { readFileSync } from "node:fs";
import { score, type PublishedCase } from "@/tests/cases/diagnose/score";

const args = process.argv.slice(2);
const file = args.find((arg) => !arg.startsWith("--")) ?? "tests/cases/diagnose/published.json";
const cases = JSON.parse(readFileSync(file, "utf8")) as PublishedCase[];
const { rows, summary } = score(cases);
if (args.includes("--each")) {
  for (const row of rows) {
    process.stdout.write(
      `${row.id.padEnd(5)} tool ${String(row.toolRank).padStart(3)}  look-up ${String(row.lookUpRank).padStart(3)}  wanted ${row.wanted.join("|")}  got ${row.top.join(", ")}\n`,
    );
  }
}
for (const [name, s] of Object.entries(summary)) {
  process.stdout.write(
    `${name.padEnd(34)} n ${s.n}  top-1 ${(100 * s.top1).toFixed(1)} %  top-3 ${(100 * s.top3).toFixed(1)} %  mean rank ${s.meanRank.toFixed(2)}\n`,
  );
}
