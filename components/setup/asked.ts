import type { RunSetup, SetupField } from "@/lib/setup";
import { isFillet } from "@/lib/trade";

/**
 * Whether a question makes sense for what is known so far. A field that holds a value is always shown, so that nothing
 * recorded is ever out of sight.
 */
export function isAsked(field: SetupField, setup: RunSetup): boolean {
  if (setup[field] !== null) return true;
  const { process, position, joint } = setup;
  switch (field) {
    case "transfer":
      return process === "GMAW";
    case "wireFeedMPerMin":
    case "ctwdMm":
      return process !== "SMAW" && process !== "GTAW";
    case "gasFlowLPerMin":
      return process !== "SMAW" && process !== "FCAW-S" && setup.gas !== "none";
    case "progression":
      return position === "vertical";
    case "targetLegMm":
      return joint === null || isFillet(joint);
    default:
      return true;
  }
}
