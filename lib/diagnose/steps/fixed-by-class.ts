import { cite, memorySource } from "../cite";
import type { ReadingContext } from "../reading";
import { noNumber, number, type Step } from "./step";

export function polarity({ setup, electrode }: ReadingContext): Step {
  const wanted = electrode?.polarity ?? [];
  return {
    ...noNumber("The class on the spool fixes the polarity.", electrode?.source ?? memorySource),
    quantity: "polarity",
    fromText: setup.polarity,
    toText: wanted.length > 0 ? wanted.join(" or ") : null,
  };
}

export function gasKind({ setup, electrode }: ReadingContext): Step {
  const wanted = electrode?.gases ?? [];
  return {
    ...noNumber("The class on the spool fixes the gas.", electrode?.source ?? memorySource),
    quantity: "gas",
    fromText: setup.gas,
    toText: wanted.length > 0 ? wanted.join(" or ") : null,
  };
}

/** Usual flow where no window is known, L/min: 25 to 45 ft³/h for solid wire, 35 to 50 for cored, 15 to 25 for TIG. */
const usualFlow: Readonly<Record<string, readonly [number, number]>> = {
  GMAW: [12, 21],
  "FCAW-G": [16.5, 23.6],
  GTAW: [7, 12],
};

export function gasFlow(ctx: ReadingContext, sign: 1 | -1): Step {
  const usual = usualFlow[ctx.setup.process ?? ""];
  const band =
    ctx.window?.gasFlowLPerMin ??
    (usual ? { low: usual[0], high: usual[1], source: cite(["C1"], false)[0]! } : null);
  const from = ctx.setup.gasFlowLPerMin;
  const to = band === null ? null : (band.low + band.high) / 2;
  const helps = from === null || to === null || sign * (to - from) > 0;
  return number("gas flow", "gas-flow", from, helps ? to : from, {
    reason: helps
      ? "The middle of the window; read it with the trigger held."
      : "The dial reads enough already: look for a leak, an empty cylinder or a blocked nozzle.",
    source: band?.source ?? memorySource,
  });
}
