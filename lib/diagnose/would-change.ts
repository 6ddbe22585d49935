import { imperfections } from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import { diagnose } from "./diagnose";
import type { DiagnoseInput } from "./input";
import type { Answer, Check, Diagnosis, RankedCause } from "./types";

/** The one answer that would turn the first cause, or shake it most. */
export interface WouldChange {
  readonly check: Check;
  readonly answer: Answer;
  /** The cause that would then come first; null: the first one stays, less likely. */
  readonly then: RankedCause | null;
  /** Of the cause that comes first now, after that answer. */
  readonly probability: number;
}

/** So many checks are tried, those that tell most: each answer to each of them is a diagnosis of its own. */
const TRIED = 8;
/** A first cause that loses less than this part of its probability is not shaken. Own choice. */
const SHAKEN = 0.25;

/**
 * What would change the mind about the first cause: of all answers to the checks that tell most, the one with the
 * greatest expected loss of it (how likely the answer is, times what the cause loses by it), an answer that puts another
 * cause first before one that only shakes it. A look for what an inspector must see is none of them. null: nothing does.
 */
export function wouldChange(
  input: DiagnoseInput,
  { causes, checks }: Pick<Diagnosis, "causes" | "checks">,
): WouldChange | null {
  const [first] = causes;
  if (first === undefined) return null;
  const found = checks
    .filter(({ imperfection }) => imperfection === null || !imperfections[imperfection].inspectorFirst)
    .toSorted((a, b) => b.informationBits - a.informationBits || a.id.localeCompare(b.id))
    .slice(0, TRIED)
    .flatMap((check) => check.answers.flatMap((answer) => afterAnswer(input, first, check, answer) ?? []));
  const turned = found.filter(({ then }) => then !== null);
  const among =
    turned.length > 0
      ? turned
      : found.filter(({ probability }) => probability <= (1 - SHAKEN) * first.probability);
  const loss = ({ answer, probability }: WouldChange) =>
    answer.probability * (first.probability - probability);
  return among.toSorted((a, b) => loss(b) - loss(a))[0] ?? null;
}

function afterAnswer(
  input: DiagnoseInput,
  first: RankedCause,
  check: Check,
  answer: Answer,
): WouldChange | null {
  const after = diagnose(withAnswer(input, check, answer.id));
  if (!after.ok) return null;
  const probability = probabilityOf(after.value.causes, first.id);
  const [now] = after.value.causes;
  const then = now !== undefined && now.id !== first.id ? now : null;
  return { check, answer, then, probability };
}

const probabilityOf = (causes: readonly RankedCause[], id: CauseId): number =>
  causes.find((cause) => cause.id === id)?.probability ?? 0;

/** The input as it would be after this answer: a look is a mark or a tick, everything else an answer. */
export function withAnswer(
  input: DiagnoseInput,
  { id, imperfection }: Check,
  answerId: string,
): DiagnoseInput {
  if (imperfection === null) return { ...input, answers: { ...input.answers, [id]: answerId } };
  return answerId === "present"
    ? {
        ...input,
        findings: [...input.findings, { imperfection, place: null, stretch: null, patterns: [] }],
      }
    : { ...input, lookedForAbsent: [...input.lookedForAbsent, imperfection] };
}
