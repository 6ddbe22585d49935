import type { WallContent, WallRow } from "@/lib/course";
import { coursePdf, drawCourseHead } from "./course-document";
import { drawTable, tableStart, type Column } from "./draw-table";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { run, type Run } from "./lay-text";
import { GREY } from "./page";

export interface ClassPdfInput {
  readonly content: WallContent;
  /** SHA-256 of the content. */
  readonly digest: string;
  readonly recordUrl: string;
  readonly ink: string;
  /** ISO 8601. */
  readonly createdAt: string;
}

/** The page for the wall as a tagged PDF 1.7, A4; it holds what the content holds, and that has no names. */
export async function classPdf({ content, ...paper }: ClassPdfInput): Promise<Uint8Array> {
  const { title, group, aim, day } = content;
  return coursePdf({ ...paper, record: group, title }, (flow) => {
    drawCourseHead(flow, `${group} · ${day}`, title, aim);
    for (const { label, value } of content.facts)
      flowText(flow, [run(`${label}: `, "text", 12), run(value, "heavy", 15)], { gap: 4 });
    flow.y += 8;
    drawRows(flow, "What is wrong most", "Imperfection", content.wrong);
    drawRows(flow, "What it likely comes from", "First cause", content.causes);
    flowText(flow, [run(content.foot, "text", 8, GREY.words)]);
  });
}

function drawRows(flow: Flow, title: string, head: string, rows: readonly WallRow[]): void {
  const columns: readonly Column[] = [
    { title: head, share: 0.46 },
    { title: "Beads", share: 0.2 },
    { title: "What so few can say", share: 0.34 },
  ];
  const cells = rows.map(({ name, count, interval }): readonly (readonly Run[])[] => [
    [run(name, "strong", 12)],
    [run(count, "strong", 12)],
    [run(interval, "text", 9)],
  ]);
  makeRoom(flow, HEADING_HEIGHT + (cells.length > 0 ? tableStart(flow, columns, cells) : 14));
  drawHeading(flow, title);
  if (cells.length > 0) drawTable(flow, columns, cells);
  else flowText(flow, [run("Nothing counted yet.", "text", 10)]);
  flow.y += 14;
}
