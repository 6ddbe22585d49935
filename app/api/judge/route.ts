import { machineDoor } from "@/app/_door/machine-door";
import { acceptSentence, judge, judgeInputJsonSchema, JudgeInputSchema } from "@/lib/accept";

export const dynamic = "force-dynamic";

export const { GET, POST } = machineDoor(JudgeInputSchema, judgeInputJsonSchema, (input) => {
  const verdict = judge(input);
  return verdict.ok ? verdict : { ok: false, lines: verdict.issues.map(acceptSentence) };
});
