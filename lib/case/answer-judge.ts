import {
  acceptSentence,
  judge,
  JudgeInputSchema,
  listCriteria,
  type JudgeInput,
  type ShopCriteria,
  type Verdict,
} from "@/lib/accept";
import { lineAt, refused, type CaseAnswer } from "./case-answer";
import { readCase } from "./read-case";
import { nameMeant } from "./unknown-names";

/** A mark as `measure` puts it out may go in as it is. */
const asMeasured = ["stretch", "issues"];

/** A setting of another set does nothing here; one of no set is a slip of the pen. */
const everySetting = [...new Set(listCriteria().flatMap(({ settings }) => settings.map(({ id }) => id)))];

/**
 * The verdict on one weld by one criteria set.
 *
 * @param shop Limits of the shop's own that the case names without carrying them; null: none are at hand. What the case
 * carries outranks them.
 */
export function answerJudge(json: unknown, shop: ShopCriteria | null): CaseAnswer<Verdict> {
  const read = readCase(JudgeInputSchema, json, asMeasured);
  if (!read.ok) return read;
  const strange = strangeSettings(read.value);
  if (strange.length > 0) return refused(strange);
  const verdict = judge({ ...read.value, shop: read.value.shop ?? shop });
  return verdict.ok
    ? verdict
    : refused(verdict.issues.map((issue) => lineAt(issue.path, acceptSentence(issue))));
}

function strangeSettings({ settings }: JudgeInput): readonly string[] {
  return Object.keys(settings)
    .filter((id) => !everySetting.includes(id))
    .map((id) => lineAt(["settings", id], `No set has such a setting. ${nameMeant(id, everySetting)}`));
}
