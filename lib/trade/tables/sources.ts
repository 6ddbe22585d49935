import type { Source } from "@/lib/base";

/** Documents behind the tables of this room. A row that leans on two of them says so in its own note. */
export const fluxCoredClassTable: Source = {
  document: "Welding textbook, ch. 23: flux-cored electrode classes, positions, shielding and polarity",
  edition: "n.d.",
  confidence: "seen",
};

export const a520: Source = {
  document: "AWS A5.20/A5.20M, carbon steel flux-cored electrodes",
  confidence: "memory",
};
export const a522: Source = {
  document: "AWS A5.22/A5.22M, stainless flux-cored and metal-cored electrodes",
  confidence: "memory",
};
export const a518: Source = {
  document: "AWS A5.18/A5.18M, carbon steel solid electrodes and rods",
  confidence: "memory",
};
export const a59: Source = {
  document: "AWS A5.9/A5.9M, bare stainless electrodes and rods",
  confidence: "memory",
};
export const a51: Source = {
  document: "AWS A5.1/A5.1M, carbon steel covered electrodes",
  confidence: "memory",
};
export const a54: Source = { document: "AWS A5.4/A5.4M, stainless covered electrodes", confidence: "memory" };

export const e309lt03Sheet: Source = {
  document: "E309LT0-3 product data sheet",
  edition: "n.d.",
  confidence: "seen",
};
export const e309lt1Sheet: Source = {
  document: "E309LT0/T1-1/-4 product data page",
  edition: "n.d.",
  confidence: "seen",
};
export const e310Sheet: Source = {
  document: "E310T0/T1-1/-4 product data sheet",
  edition: "ISO 9001:2008 era",
  confidence: "seen",
};

/** Restates data sheets and AWS tables, so it does not count as a second witness beside them. */
export const shopReferenceNotes: Source = {
  document: "Trade reference notes on self-shielded and gas metal arc set-up, restating data sheets",
  edition: "n.d.",
  confidence: "seen",
};
export const modernWelding: Source = {
  document: "Modern Welding, ch. 8",
  edition: "2020",
  clause: "pp. 205-228",
  confidence: "seen-part",
  note: "the excerpt ends before its gas note, so the rows lean to CO2",
};
export const wireFeedManual: Source = {
  document: "Small wire-feed machine owner's manual: amps per thickness, wire feed per amp",
  edition: "n.d.",
  confidence: "seen",
};
export const shortArcCard: Source = {
  document: "Wire-feed data card for solid wire, short-circuit and spray ranges",
  edition: "n.d., older",
  confidence: "seen",
};
export const selfShieldedPractice: Source = {
  document: "Best Practices for Success in Self-Shielded Flux-Cored Welding",
  edition: "n.d.",
  confidence: "seen",
};
export const apprenticeNotes: Source = {
  document: "Apprenticeship study notes: wire-feed set-up, gases and wires",
  edition: "n.d.",
  confidence: "seen",
};
export const electrodeCurrentNotes: Source = {
  document: "Covered-electrode current notes (1/8 in rods, overhead rule, core-diameter rule)",
  edition: "n.d.",
  confidence: "seen",
};
export const gtawHandbook: Source = {
  document: "Gas Tungsten Arc Welding Handbook",
  edition: "2021",
  clause: "pp. 137-149",
  confidence: "seen",
};
export const fillerCourse: Source = {
  document: "Filler-metal home-study course, lesson VII",
  edition: "2000",
  confidence: "seen",
};

export const commonPractice: Source = {
  document: "common practice, no source",
  confidence: "common-practice",
};
export const fromMemory: Source = { document: "trade knowledge, no text read", confidence: "memory" };

/** The same document, with a remark or a lower confidence for one row. */
export function remark(source: Source, note: string, confidence = source.confidence): Source {
  return { ...source, note, confidence };
}
