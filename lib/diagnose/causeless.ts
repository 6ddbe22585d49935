import { commonPractice, type ImperfectionId, ownEstimate, type Process } from "@/lib/trade";
import { imperfectionName } from "./evidence";
import type { DiagnoseInput } from "./input";
import { linksFor } from "./model";
import { withoutCause } from "./tables/without-cause";
import type { Causeless } from "./types";

const markedIn = (input: DiagnoseInput): readonly ImperfectionId[] =>
  [...new Set(input.findings.map(({ imperfection }) => imperfection))].toSorted();

/** What is marked and can come from how the bead was run, in this process or, while it is unknown, in any. */
export function explainable(input: DiagnoseInput): readonly ImperfectionId[] {
  return markedIn(input).filter((id) => linksFor(id, input.setup.process).length > 0);
}

/** What is marked and nothing in the tables leaves in this process: a sentence each, where a cause would mislead. */
export function causeless(input: DiagnoseInput): readonly Causeless[] {
  const { process } = input.setup;
  return markedIn(input)
    .filter((id) => linksFor(id, process).length === 0)
    .map((id) => sayCauseless(id, process));
}

function sayCauseless(id: ImperfectionId, process: Process | null): Causeless {
  const handled = withoutCause[id];
  const rest =
    handled ??
    `nothing known here leaves it with ${process}. Look again whether it is that, and whether the process is right.`;
  const source = handled === undefined ? ownEstimate : commonPractice;
  return { imperfection: id, sentence: `${imperfectionName(id)}: ${rest}`, amounts: [], source };
}
