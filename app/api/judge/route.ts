import { machineDoor } from "@/app/_door/machine-door";
import { getShopSet } from "@/lib/record";
import { acceptSentence, judge, judgeInputJsonSchema, JudgeInputSchema } from "@/lib/accept";

export const dynamic = "force-dynamic";

/** A case that names limits of the shop's own without carrying them is judged by those of this installation. */
export const { GET, POST } = machineDoor(JudgeInputSchema, judgeInputJsonSchema, async (input, { db }) => {
  const shop = input.shop ?? (await getShopSet(db, input.criteriaId))?.content ?? null;
  const verdict = judge({ ...input, shop });
  return verdict.ok ? verdict : { ok: false, lines: verdict.issues.map(acceptSentence) };
});
