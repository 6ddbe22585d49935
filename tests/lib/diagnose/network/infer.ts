import { solverFor } from "@/lib/diagnose/network/infer";
import type { Evidence, Network, Posterior } from "@/lib/diagnose/network/types";

/** The posterior of one network under one evidence, in a single call. */
export function infer(network: Network, evidence: Evidence): Posterior {
  return solverFor(network, evidence.present).solve(evidence);
}
