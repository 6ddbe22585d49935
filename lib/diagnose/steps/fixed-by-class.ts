import { fieldInText, usualWindow } from "@/lib/setup";
import { fromMemory, type Gas } from "@/lib/trade";
import type { ReadingContext } from "../reading";
import { noNumber, number, type Step } from "./step";

export function polarity({ setup, electrode }: ReadingContext): Step {
  const usual =
    setup.process === "GMAW" || setup.process === "FCAW-G"
      ? ["DCEP"]
      : setup.process === "GTAW"
        ? ["DCEN"]
        : [];
  const wanted = (electrode?.polarity ?? usual).filter((one) => one !== setup.polarity);
  return {
    ...noNumber(
      electrode === null
        ? "The usual pole of this process; the class on the spool decides."
        : "The class on the spool fixes the polarity.",
      electrode?.source ?? fromMemory,
    ),
    quantity: "polarity",
    fromText: setup.polarity,
    toText: wanted.length > 0 ? wanted.join(" or ") : null,
  };
}

const sprays: readonly Gas[] = ["90Ar-10CO2", "98Ar-2O2", "98Ar-2CO2", "80Ar-20CO2"];

/** The gases of the class without the one that was used; where it cannot spray, those that can. */
export function gasKind({ setup, electrode, facts }: ReadingContext): Step {
  const faulty = (code: string) => facts.find((fact) => fact.code === code && fact.severity !== null);
  const allowed = faulty("gas-reactive-on-tungsten")
    ? (["Ar"] as const)
    : faulty("gas-cannot-spray")
      ? sprays.filter(
          (gas) => electrode === null || electrode.gases.length === 0 || electrode.gases.includes(gas),
        )
      : (electrode?.gases ?? []);
  const wanted = faulty("gas-against-metal")?.data["wanted"] ?? namedGases(allowed, setup.gas);
  return {
    ...noNumber("The class on the spool fixes the gas.", electrode?.source ?? fromMemory),
    quantity: "gas",
    fromText: setup.gas,
    toText: wanted === null ? null : String(wanted),
  };
}

/** "CO2 or 75Ar-25CO2", without the gas that was used; null where none is left. */
function namedGases(gases: readonly Gas[], used: Gas | null): string | null {
  return gases.filter((gas) => gas !== used && gas !== "none").join(" or ") || null;
}

export function gasFlow(ctx: ReadingContext, sign: 1 | -1): Step {
  const band = ctx.window?.gasFlowLPerMin ?? usualWindow(ctx.setup).gasFlowLPerMin ?? null;
  const from = ctx.setup.gasFlowLPerMin;
  const to = band === null ? null : (band.low + band.high) / 2;
  const helps = from === null || to === null || sign * (to - from) > 0;
  return number(fieldInText("gasFlowLPerMin"), "gas-flow", from, helps ? to : from, {
    reason: helps
      ? "The middle of what is usual; read it with the gas purging and the wire feed off."
      : "The dial reads enough already: look for a leak, an empty cylinder or a blocked nozzle.",
    source: band?.source ?? fromMemory,
  });
}
