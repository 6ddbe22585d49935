import { runDoor } from "./door";

const use = `Judges one weld by one criteria set.

  npm run -s judge -- case.json    prints the verdict as JSON; "-" reads the case from standard input
  npm run -s judge -- --list       the criteria sets, their settings and their rows
  npm run -s judge -- --schema     the JSON Schema of a case

Lengths are in millimetres (1 in = 25.4), angles in degrees. A size is a number, taken as it stands, or
{"unit": "mm", "value": 0.4, "expandedUncertainty": 0.1, "source": "gauge" | "photo" | "stated"}.
"lookedFor": "all" says that what is not observed is absent; "only": ["undercut"] judges those clauses alone.
Readings of the bead hold along it; a stretch that differs is an observation with its own length. An observation without
a place lies on the face; "patterns": ["clustered"] makes one a patch, whose diameterMm is that of its largest pore.
For example, level C, 10 mm plate, undercut 0.4 mm deep:

  {"criteriaId": "iso-5817-c", "weld": {"kind": "butt", "thicknessMm": 10, "lengthMm": 300}, "only": ["undercut"],
   "observations": [{"id": "u1", "imperfection": "undercut", "depthMm": 0.4, "alongMm": [20, 60]}]}

The answer's "verdict" is accept, reject or cannot-say; its "rows" name clause, limit, value and margin in mm, and
"missing" the readings that would settle it; "contradictions" those that cannot stand together, while there are any
nothing is accepted, and "unused" what no clause went by. Where a code states two unit systems, settings.units says
which rules; settings.gauges is the decision rule: "as-read", "guarded" or "one-sided".

Exit code: 0 judged (whatever the verdict), 2 the case was not understood.
The verdict defers to the governing code, local rules and qualified people.`;

runDoor("judge", use);
