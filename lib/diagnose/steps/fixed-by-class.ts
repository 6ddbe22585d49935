import { fieldInText } from "@/lib/setup";
import { fromMemory } from "@/lib/trade";
import type { ReadingContext } from "../reading";
import { usualWindow } from "../usual-windows";
import { noNumber, number, type Step } from "./step";

export function polarity({ setup, electrode }: ReadingContext): Step {
  const wanted = electrode?.polarity ?? [];
  return {
    ...noNumber("The class on the spool fixes the polarity.", electrode?.source ?? fromMemory),
    quantity: "polarity",
    fromText: setup.polarity,
    toText: wanted.length > 0 ? wanted.join(" or ") : null,
  };
}

export function gasKind({ setup, electrode }: ReadingContext): Step {
  const wanted = electrode?.gases ?? [];
  return {
    ...noNumber("The class on the spool fixes the gas.", electrode?.source ?? fromMemory),
    quantity: "gas",
    fromText: setup.gas,
    toText: wanted.length > 0 ? wanted.join(" or ") : null,
  };
}

export function gasFlow(ctx: ReadingContext, sign: 1 | -1): Step {
  const band = ctx.window?.gasFlowLPerMin ?? usualWindow(ctx.setup).gasFlowLPerMin ?? null;
  const from = ctx.setup.gasFlowLPerMin;
  const to = band === null ? null : (band.low + band.high) / 2;
  const helps = from === null || to === null || sign * (to - from) > 0;
  return number(fieldInText("gasFlowLPerMin"), "gas-flow", from, helps ? to : from, {
    reason: helps
      ? "The middle of the window; read it with the trigger held."
      : "The dial reads enough already: look for a leak, an empty cylinder or a blocked nozzle.",
    source: band?.source ?? fromMemory,
  });
}
