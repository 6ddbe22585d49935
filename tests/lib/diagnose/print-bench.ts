/**
 * Time of the exact inference from 1 to 20 present findings over the full tables, beside straightforward
 * inclusion-exclusion in the same run; of the ranking as the screen needs it; and of what follows when it is asked for:
 * the reasons of the first cause, and everything. Argument: a process, or "any". `npx tsx tests/lib/diagnose/print-bench.ts`
 */
import { diagnose, DiagnoseInputSchema, type DiagnoseInput, type Diagnosis } from "@/lib/diagnose";
import { causeModel, linksFor, signIds } from "@/lib/diagnose/model";
import { infer } from "./network/infer";
import { inclusionExclusion } from "@/tests/lib/diagnose/network/inclusion-exclusion";
import { imperfectionIds, processes } from "@/lib/trade";

const asked = process.argv[2];
const PROCESS = asked === "any" ? null : (processes.find((p) => p === asked) ?? "FCAW-G");
/** Inclusion-exclusion doubles with each finding; beyond this it is not waited for. */
const PATIENCE = 13;

function medianMs(run: () => void, times: number): number {
  run();
  const took = Array.from({ length: times }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).toSorted((a, b) => a - b);
  return took[Math.floor(times / 2)] ?? NaN;
}

function ranked(input: DiagnoseInput): Diagnosis {
  const result = diagnose(input);
  if (!result.ok) throw new Error("not diagnosed");
  return result.value;
}

const { network } = causeModel(PROCESS);
// The hardest order: the imperfections that most causes can make come first.
const ids = imperfectionIds
  .toSorted((a, b) => linksFor(b, PROCESS).length - linksFor(a, PROCESS).length)
  .slice(0, 20);
const rows = ids.map((_, i) => {
  const marks = ids.slice(0, i + 1);
  const evidence = { present: marks.map((id) => signIds.indexOf(id)), absent: [], virtual: [] };
  const input = DiagnoseInputSchema.parse({
    setup: { process: PROCESS },
    findings: marks.map((imperfection) => ({ imperfection })),
  });
  const exactMs = medianMs(() => infer(network, evidence), 9);
  const baselineMs =
    i < PATIENCE ? medianMs(() => inclusionExclusion(network, evidence), i < 10 ? 5 : 1) : NaN;
  const gap =
    i < PATIENCE
      ? Math.abs(
          inclusionExclusion(network, evidence).marginals[0]![1]! -
            infer(network, evidence).marginals[0]![1]!,
        )
      : NaN;
  return {
    findings: i + 1,
    exactMs: +exactMs.toFixed(3),
    inclusionExclusionMs: +baselineMs.toFixed(3),
    ratio: +(baselineMs / exactMs).toFixed(1),
    gap: +gap.toExponential(1),
    rankingMs: +medianMs(() => ranked(input), 9).toFixed(1),
    firstReasonsMs: +medianMs(() => ranked(input).causes[0]!.why, 5).toFixed(1),
    everythingMs: +medianMs(() => JSON.stringify(ranked(input)), 3).toFixed(1),
  };
});
console.table(rows);
