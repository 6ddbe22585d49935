import type { CauseId } from "../cause-ids";
import type { DiagnoseInput } from "../input";
import type { EvidenceItem } from "../evidence";
import { linksFor, type CauseModel } from "../model";

/** An odds factor from here on speaks for a cause. */
const SPEAKS = 1.4;

/**
 * Whether enough is known to speak at all: marks of two kinds, an answer, or something of how it was run beside the process.
 * One kind of mark alone points everywhere.
 */
export function knownEnough({ setup, findings, answers, bead }: DiagnoseInput): boolean {
  const { process: _process, schemaVersion: _version, ...rest } = setup;
  return (
    new Set(findings.map(({ imperfection }) => imperfection)).size > 1 ||
    [...Object.values(rest), ...Object.values(bead)].some((value) => value !== null) ||
    Object.keys(answers).length > 0
  );
}

/** How many things known speak for a cause by themselves: marks it makes, looks that lean to it, readings, answers. */
export function supportsOf(model: CauseModel, items: readonly EvidenceItem[]): (cause: CauseId) => number {
  return (cause) => items.filter((item) => speaksFor(model, item, cause)).length;
}

function speaksFor(model: CauseModel, item: EvidenceItem, cause: CauseId): boolean {
  const { present, odds, strength, makes, answer } = item;
  if ((odds[cause] ?? 1) >= SPEAKS || (strength[cause] ?? 1) >= SPEAKS || makes[cause] !== undefined)
    return true;
  const column = answer?.causes.indexOf(cause) ?? -1;
  if (answer !== null && column >= 0) return answer.likelihood[column + 1]! >= SPEAKS * answer.likelihood[0]!;
  return present !== null && linksFor(present, model.process).some((link) => link.cause === cause);
}
