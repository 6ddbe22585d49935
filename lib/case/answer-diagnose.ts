import { diagnose, DiagnoseInputSchema, diagnoseSentences, type Diagnosis } from "@/lib/diagnose";
import { lineAt, refused, type CaseAnswer } from "./case-answer";
import { readCase } from "./read-case";

/** Likely causes of what was seen on one bead, and the one change to try. */
export function answerDiagnose(json: unknown): CaseAnswer<Diagnosis> {
  const read = readCase(DiagnoseInputSchema, json);
  if (!read.ok) return read;
  const diagnosis = diagnose(read.value);
  return diagnosis.ok
    ? diagnosis
    : refused(diagnosis.issues.map(({ code, path, data }) => lineAt(path, diagnoseSentences[code](data))));
}
