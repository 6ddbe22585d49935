import { CHECK_YOUR_COPY, type SheetDocument } from "@/lib/report";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { drawTable, tableStart, type Column } from "./draw-table";
import { foldClauses } from "./fold-clauses";
import { run, type Run } from "./lay-text";
import { GREY } from "./page";

const columns: readonly Column[] = [
  { title: "Result", share: 0.14 },
  { title: "Clause", share: 0.62 },
  { title: "Source", share: 0.24 },
];

/** The verdict in words, what it still wants, and each clause that was read. */
export function drawVerdict(flow: Flow, { verdict }: SheetDocument): void {
  if (!verdict) {
    makeRoom(flow, HEADING_HEIGHT + 14);
    drawHeading(flow, "Verdict");
    flowText(flow, [run("No criteria chosen.", "text", 9.5)], { gap: 10 });
    return;
  }
  makeRoom(flow, HEADING_HEIGHT + 30);
  drawHeading(flow, `Verdict: ${verdict.word}`);
  const say = (text: string) => flowText(flow, [run(text, "text", 9.5)]);
  say(verdict.long);
  if (verdict.checkYourCopy) say(CHECK_YOUR_COPY);
  for (const sentence of verdict.contradictions) say(sentence);
  if (verdict.notCarried) say(verdict.notCarried);
  if (verdict.unused) say(verdict.unused);
  if (verdict.missing.length > 0) say(`Missing: ${verdict.missing.join("; ")}.`);
  if (verdict.notLookedFor.length > 0) say(`Not looked for: ${verdict.notLookedFor.join(", ")}.`);
  if (verdict.clauses.length > 0) {
    const rows = verdict.clauses.map((row): readonly (readonly Run[])[] => [
      [run(row.result, "strong", 9)],
      [run(`${row.title}: `, "strong", 9), run(row.detail, "text", 9)],
      [
        run(foldClauses(row.clause), "text", 8, GREY.words),
        ...(row.checkYourCopy ? [run(" Check your copy.", "text", 8, GREY.words)] : []),
      ],
    ]);
    flow.y += 2;
    makeRoom(flow, tableStart(flow, columns, rows));
    drawTable(flow, columns, rows);
  }
  flow.y += 11;
}
