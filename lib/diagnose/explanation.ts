import { type ImperfectionId, imperfections, ownEstimate } from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import type { DiagnoseInput } from "./input";
import type { Causeless, Contradiction, JointExplanation, RankedCause, Statement } from "./types";
import { weightsNote } from "./weights";

interface Told {
  readonly causes: readonly RankedCause[];
  readonly joint: JointExplanation | null;
  readonly contradictions: readonly Contradiction[];
  readonly stopped: boolean;
  readonly canExplain: readonly ImperfectionId[];
  readonly unexplained: readonly Causeless[];
  /** The cause that the advice goes against first; null where it found none that stands out. */
  readonly suspect: CauseId | null;
}

const say = (sentence: string, source = ownEstimate): Statement => ({ sentence, amounts: [], source });

/** The whole in a few sentences, in reading order. */
export function explain(
  input: DiagnoseInput,
  { causes, joint, contradictions, stopped, canExplain, unexplained, suspect }: Told,
): readonly Statement[] {
  const lines: Statement[] = [];
  if (stopped)
    lines.push(
      say(
        "Something is marked that a qualified inspector must see first; no change is proposed before that.",
      ),
    );
  if (contradictions.length > 0)
    lines.push(say("The record contradicts itself; clear that up before trusting what follows."));
  if (input.findings.length === 0)
    lines.push(say("Nothing is marked: what is said follows from the set-up and the answers alone."));
  lines.push(...unexplained.map(({ sentence, source }) => say(sentence, source)));
  if (unexplained.length > 0 && canExplain.length === 0)
    lines.push(
      say("Causes are ranked from the set-up and the answers alone; nothing marked speaks for any."),
    );
  lines.push(...suspicion(causes, suspect));
  const names = joint?.causes.map((id) => causes.find((cause) => cause.id === id)!.name.toLowerCase()) ?? [];
  if (names.length > 1) lines.push(say(`Taken together, ${names.join(" with ")} explain the marks best.`));
  if (joint && joint.leaves.length > 0) {
    const left = joint.leaves.map((id) => imperfections[id].name.toLowerCase());
    lines.push(say(`Not explained by it: ${left.join(", ")}.`));
  }
  return [...lines, say(weightsNote)];
}

/** The cause that the advice goes against; without one, the two that come first and the way on. */
function suspicion(causes: readonly RankedCause[], suspect: CauseId | null): readonly Statement[] {
  const suspected = causes.find(({ id }) => id === suspect);
  if (suspected)
    return [say(`${suspected.name} is the first suspect. ${suspected.sentence}`, suspected.why[0]?.source)];
  const [first, second] = causes;
  if (!first || !second) return [];
  const both = `${first.name.toLowerCase()} and ${second.name.toLowerCase()}`;
  return [say(`No cause stands out; ${both} come first. Answer the next question below.`)];
}
