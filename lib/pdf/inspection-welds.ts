import type { RecordSection } from "@/lib/inspect";
import { drawTable, tableStart, type Column } from "./draw-table";
import { drawHeading, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { run, type Run } from "./lay-text";

const WELD = /^Weld /;
/** So many welds get a line each of one table; fewer are told row by row. */
const MANY = 3;

const columns: readonly Column[] = [
  { title: "Weld", share: 0.07 },
  { title: "Part, drawing, material", share: 0.2 },
  { title: "Thickness", share: 0.11 },
  { title: "Joint and position", share: 0.13 },
  { title: "Welder", share: 0.09 },
  { title: "To inspect", share: 0.115 },
  { title: "Seen", share: 0.115 },
  { title: "Beads", share: 0.06 },
  { title: "Result", share: 0.11 },
];

/** The sections of a record that stand by themselves, and its many welds, which share one table. */
export function partSections(sections: readonly RecordSection[]): {
  readonly alone: readonly RecordSection[];
  readonly welds: readonly RecordSection[];
} {
  const welds = sections.filter(({ title }) => WELD.test(title));
  if (welds.length < MANY) return { alone: sections, welds: [] };
  return { alone: sections.filter(({ title }) => !WELD.test(title)), welds };
}

/** One line a weld, with all that its section says. */
export function drawWelds(flow: Flow, welds: readonly RecordSection[]): void {
  if (welds.length === 0) return;
  const rows = welds.map(({ title, rows }): readonly (readonly Run[])[] => {
    const of = (label: string): string => rows.find((row) => row.label === label)?.value ?? "";
    const words = (text: string) => [run(text, "text", 8.5)];
    return [
      [run(title.replace(WELD, ""), "strong", 9)],
      words([of("Part"), of("Drawing"), of("Material")].join(", ")),
      words(of("Thickness")),
      words(of("Joint and position")),
      [run(of("Welder identification"), "strong", 8.5)],
      words(of("To inspect")),
      words(of("Seen")),
      words(of("Beads")),
      [run(of("Result"), "strong", 8.5)],
    ];
  });
  makeRoom(flow, HEADING_HEIGHT + tableStart(flow, columns, rows));
  drawHeading(flow, "Welds");
  drawTable(flow, columns, rows);
  flow.y += 9;
}
