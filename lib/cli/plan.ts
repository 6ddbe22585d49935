import { runDoor } from "./door";

const use = `Plans one run before the arc: where to start each dial, how far it may be turned, what comes of it.

  npm run -s plan -- case.json    prints the plan as JSON; "-" reads the case from standard input
  npm run -s plan -- --list       the fields, joints, figures, limits and refusals
  npm run -s plan -- --schema     the JSON Schema of a case

Lengths are in millimetres (1 in = 25.4). What the class settles by itself (polarity, most gases) may be left out.
"dials": "inch" rounds to inch dials; "steel" with its certificate adds carbon equivalents, preheat and cooling time. For example, a T-joint in 6 mm plate on a 120 V socket:

  {"electrodeClass": "E71T-11", "electrodeDiameterMm": 0.9, "joint": "tee", "position": "horizontal",
   "thicknessMm": 6, "inputPower": "120V"}

The answer's "plan" is null where there is none; then "refusals" say why and "ways" what would make it go. "plates" are
the thinnest and thickest this wire and input carry; "comparisons" the same job by input, gas and wire.

Exit code: 0 an answer (whether or not there is a plan), 2 the case was not understood.
A starting point for scrap, never a procedure: the wire's data sheet and the qualified procedure govern.`;

runDoor("plan", use);
