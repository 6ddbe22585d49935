import { groundOf, groundsOf } from "./advice/grounds";
import type { CauseId } from "./cause-ids";
import { certaintyOf, type Certainty } from "./certainty";
import type { DiagnoseInput } from "./input";
import type { Diagnosis } from "./types";

/**
 * How surely a cause is at work. "record": the record itself shows it. "found": somebody looked and found it. A certainty:
 * it is the likeliest by the evidence. "among": it is not the likeliest, and nothing says how often such a one is right.
 */
export type Basis = "record" | "found" | "among" | Certainty;

/** What a cause rests on, given the input its diagnosis was made from. */
export function basisOf(
  input: DiagnoseInput,
  { causes, contradictions }: Pick<Diagnosis, "causes" | "contradictions">,
  cause: CauseId,
): Basis {
  const ground = groundOf(cause, groundsOf(input, contradictions, []));
  if (ground !== "evidence") return ground === "record" ? "record" : "found";
  const [first] = causes;
  return first?.id === cause ? certaintyOf(first.probability) : "among";
}
