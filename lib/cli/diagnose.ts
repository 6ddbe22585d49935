import { runDoor } from "./door";

const use = `Ranks the likely causes of what was marked on one bead, and names the one change to try.

  npm run -s diagnose -- case.json    prints the causes as JSON; "-" reads the case from standard input
  npm run -s diagnose -- --list       readings, imperfections, places, patterns, causes, questions and their answers
  npm run -s diagnose -- --schema     the JSON Schema of a case

For example, a self-shielded wire on the wrong lug:

  {"setup": {"process": "FCAW-S", "electrodeClass": "E71T-11", "polarity": "DCEP", "volts": 16},
   "findings": [{"imperfection": "spatter"}, {"imperfection": "surface-porosity", "stretch": "whole-length"}]}

The answer's "causes" are ranked, most likely first; their probabilities rank and are no frequencies.

Exit code: 0 a diagnosis, 2 the case was not understood.`;

runDoor("diagnose", use);
