import { acceptSentence, judge, judgeInputJsonSchema, JudgeInputSchema, listCriteria } from "@/lib/accept";
import { readCase, runDoor } from "./door";

const use = `Judges one weld by one criteria set.

  npm run -s judge -- case.json    prints the verdict as JSON; "-" reads the case from standard input
  npm run -s judge -- --list       the criteria sets, their settings and their rows
  npm run -s judge -- --schema     the JSON Schema of a case

Exit code: 0 judged (whatever the verdict), 2 the case was not understood.
The verdict defers to the governing code, local rules and qualified people.`;

runDoor(use, {
  "--list": () => listCriteria(),
  "--schema": () => judgeInputJsonSchema(),
  case: (path) => {
    const read = readCase(path, JudgeInputSchema);
    if (!read.ok) return read;
    const verdict = judge(read.value);
    return verdict.ok ? verdict : { ok: false, lines: verdict.issues.map(acceptSentence) };
  },
});
