import {
  measureCase,
  measureCaseJsonSchema,
  MeasureCaseSchema,
  measureSentence,
  measureVocabulary,
} from "@/lib/measure";
import { readCase, runDoor } from "./door";

const use = `Measures the marks of one drawing in millimetres, each with its uncertainty (k = 2).

  npm run -s measure -- case.json    prints the sizes as JSON; "-" reads the case from standard input
  npm run -s measure -- --list       kinds of scale and shape, parts of an uncertainty, reasons, assumed options
  npm run -s measure -- --schema     the JSON Schema of a case

Exit code: 0 measured, 2 the case was not understood. A drawing without a scale is measured too: its sizes are null.`;

runDoor(use, {
  "--list": () => measureVocabulary(),
  "--schema": () => measureCaseJsonSchema(),
  case: (path) => {
    const read = readCase(path, MeasureCaseSchema);
    if (!read.ok) return read;
    const report = measureCase(read.value);
    for (const issue of report.scaleIssues) console.error(measureSentence(issue));
    return { ok: true, value: report };
  },
});
