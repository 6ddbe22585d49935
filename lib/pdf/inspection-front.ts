import {
  lookedAt,
  recordSections,
  resultNames,
  resultTitle,
  type RecordSection,
  type SignedRecord,
} from "@/lib/inspect";
import { standingSentence } from "@/lib/signature";
import { drawTable, tableHeight, type Column } from "./draw-table";
import { drawRule, flowText, putBlock, type Flow } from "./flow";
import type { InspectionPdfInput } from "./inspection-input";
import { drawSignature, signatureHeight } from "./inspection-signature";
import { layText, run, type Run } from "./lay-text";
import { BODY_BOTTOM, BODY_WIDTH, LEFT, RULE } from "./page";

/** What the front says, so that no later table says it again. */
const ON_FRONT = new Set([
  "Report number",
  "Day of the inspection",
  "Examining body",
  "Inspector's certificate",
]);

/** Sections that are told after the front, each without what the front said. */
export function furtherSections(sections: readonly RecordSection[]): readonly RecordSection[] {
  return sections
    .filter(({ title }) => title !== "Job" && title !== "Instruments")
    .map(({ title, rows }) => ({ title, rows: rows.filter(({ label }) => !ON_FRONT.has(label)) }));
}

/** The first page: what and for whom, how each weld stands, and who signed it, with the digest. */
export function drawFront(flow: Flow, input: InspectionPdfInput, kicker: string): void {
  drawTitle(flow, input, kicker);
  drawFacts(flow, input);
  drawVerdicts(flow, input);
  drawSignature(flow, input);
  flow.y += 4;
  flowText(flow, [run(input.record.statement, "text", 8.5)], { gap: 9 });
}

function drawTitle(flow: Flow, { record, signed }: InspectionPdfInput, kicker: string): void {
  drawRule(flow, 36, RULE.heavy);
  flow.y = 46;
  const put = (type: string, text: string, face: "display" | "heavy" | "text", size: number) => {
    const block = layText(flow.faces, [run(text, face, size)], BODY_WIDTH, { leading: 1.14 });
    putBlock(flow, flow.root, type, block, LEFT, flow.y);
    flow.y += block.height + 3;
  };
  put("P", `Visual inspection report · ${kicker}`, "display", 12);
  put("H1", record.job.content.title, "heavy", 24);
  put("P", `${resultTitle(signed)}: ${resultNames[record.result]}`, "heavy", 17);
  if (signed) put("P", standingSentence(signed.standing), "text", 8.5);
  flow.y += 4;
}

const facts: readonly Column[] = [
  { title: "What", share: 0.15 },
  { title: "As recorded", share: 0.33 },
  { title: "What", share: 0.18 },
  { title: "As recorded", share: 0.34 },
];

/** Firm, customer, numbers and criteria, two to a line. */
function drawFacts(flow: Flow, { record }: InspectionPdfInput): void {
  const sections = recordSections(record);
  const rowsOf = (name: string) => sections.find(({ title }) => title === name)?.rows ?? [];
  const viewing = rowsOf("Viewing conditions").filter(
    ({ label }) => ON_FRONT.has(label) && label !== "Inspector's certificate",
  );
  const number = record.draft.reportNumber ?? `inspection ${record.inspection.number}`;
  const all = [
    { label: "Report number", value: number },
    ...(record.job.content.customer ? [] : [{ label: "Customer", value: "not recorded" }]),
    ...rowsOf("Job"),
    ...viewing.filter(({ label }) => label !== "Report number"),
  ];
  const half = Math.ceil(all.length / 2);
  const cells = (one: (typeof all)[number] | undefined): readonly (readonly Run[])[] =>
    one ? [[run(one.label, "text", 8.5)], [run(one.value, "strong", 8.5)]] : [[], []];
  drawTable(
    flow,
    facts,
    Array.from({ length: half }, (_, i) => [...cells(all[i]), ...cells(all[half + i])]),
  );
  flow.y += 8;
}

const verdicts: readonly Column[] = [
  { title: "Weld", share: 0.1 },
  { title: "Result", share: 0.16 },
  { title: "Judged by", share: 0.28 },
  { title: "To inspect", share: 0.19 },
  { title: "Seen", share: 0.19 },
  { title: "Beads", share: 0.08 },
];

/** How each weld stands; where they are too many for the page, how many stand how, and which are not accepted. */
function drawVerdicts(flow: Flow, input: InspectionPdfInput): void {
  const { record, units } = input;
  const sections = new Map(recordSections(record, units).map(({ title, rows }) => [title, rows]));
  const rows = lookedAt(record.job.content, record.draft).map(
    ({ id, number }): readonly (readonly Run[])[] => {
      const said = sections.get(`Weld ${number}`) ?? [];
      const of = (label: string) => said.find((row) => row.label === label)?.value ?? "";
      return [
        [run(number, "strong", 9)],
        [run(of("Result"), "strong", 9)],
        [run(judgedBy(record, id), "text", 8.5)],
        [run(of("To inspect"), "text", 8.5)],
        [run(of("Seen"), "text", 8.5)],
        [run(of("Beads"), "text", 8.5)],
      ];
    },
  );
  const statement = layText(flow.faces, [run(record.statement, "text", 8.5)], BODY_WIDTH).height;
  const room = BODY_BOTTOM - flow.y - signatureHeight(flow, input) - statement - 24;
  const isFitting = rows.length > 0 && tableHeight(flow, verdicts, rows) <= room;
  if (isFitting) drawTable(flow, verdicts, rows);
  else drawCounts(flow, record);
  flow.y += 8;
}

function judgedBy({ beads }: SignedRecord, weldId: string): string {
  const titles = beads.flatMap((bead) =>
    bead.weldId === weldId && bead.verdict ? [`${bead.verdict.criteria}, ${bead.verdict.edition}`] : [],
  );
  return [...new Set(titles)].join("; ") || "no verdict";
}

function drawCounts(flow: Flow, record: SignedRecord): void {
  const { job, weldResults } = record;
  const numberOf = (weldId: string) => job.content.welds.find(({ id }) => id === weldId)?.number ?? weldId;
  const words = (result: "accepted" | "not-accepted" | "open") => {
    const ids = weldResults.filter((one) => one.result === result).map(({ weldId }) => weldId);
    return ids.length === 0 ? [] : [{ name: resultNames[result], ids }];
  };
  const say = (text: string, face: "text" | "strong" = "text") => flowText(flow, [run(text, face, 9.5)]);
  say(
    weldResults.length === 0
      ? "No weld was looked at."
      : `${weldResults.length} welds were looked at. Each stands by itself below.`,
  );
  for (const { name, ids } of (["not-accepted", "open", "accepted"] as const).flatMap(words)) {
    // Those that were accepted need no names here: every other one is named, as far as a page holds them.
    const named = name === resultNames.accepted ? "" : `: ${listed(ids.map(numberOf))}`;
    say(`${name}: ${ids.length}${named ? ` (${named.slice(2)})` : ""}`, "strong");
  }
}

const MOST_NAMED = 40;
const listed = (numbers: readonly string[]): string =>
  numbers.slice(0, MOST_NAMED).join(", ") +
  (numbers.length > MOST_NAMED ? ` and ${numbers.length - MOST_NAMED} more` : "");
