import type { ElectrodeFamily } from "@/lib/trade";

/** What each family of electrodes is called on the form. A record, so that a new one cannot go without a name. */
export const familyWords: Record<ElectrodeFamily, string> = {
  "self-shielded-cored": "Flux-cored, no gas",
  "gas-shielded-cored": "Flux-cored with gas",
  "stainless-self-shielded-cored": "Stainless flux-cored, no gas",
  "stainless-gas-shielded-cored": "Stainless flux-cored with gas",
  "solid-wire": "Solid wire",
  "stainless-solid-wire": "Stainless solid wire",
  cellulosic: "Stick, cellulosic",
  rutile: "Stick, rutile",
  "low-hydrogen": "Stick, low hydrogen",
  "iron-powder": "Stick, iron powder",
  "stainless-covered": "Stick, stainless",
  rod: "Rod",
  "stainless-rod": "Stainless rod",
};
