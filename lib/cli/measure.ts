import { measureSentence } from "@/lib/measure";
import { runDoor } from "./door";

const use = `Measures the marks of one drawing in millimetres, each with its uncertainty (k = 2).

  npm run -s measure -- case.json    prints the sizes as JSON; "-" reads the case from standard input
  npm run -s measure -- --list       kinds of scale and shape, parts of an uncertainty, reasons, assumed options
  npm run -s measure -- --schema     the JSON Schema of a case

Points are photo pixels, x right, y down. For example, a rule and an undercut along a line:

  {"drawing": {"scale": {"kind": "two-points", "a": {"x": 0, "y": 0}, "b": {"x": 2000, "y": 0}, "lengthMm": 100},
    "marks": [{"id": "u1", "imperfection": "undercut",
               "shape": {"kind": "line", "points": [{"x": 500, "y": 300}, {"x": 660, "y": 300}]}}]}}

"weldLine" places marks along the weld; "toes", "ripples" and "windows" measure width, evenness and the worst stretch,
"filletSeen" gives the leg of a fillet between the toes, "angles" the angle at an apex.

Exit code: 0 measured, 2 the case was not understood. A drawing without a scale is measured too: its sizes are null.`;

runDoor("measure", use, ({ scaleIssues }) => scaleIssues.map(measureSentence));
