/**
 * The documents the tables lean on. Tier A: institute, government, peer-reviewed paper, engineering handbook.
 * B: textbook, trade press, handbook, technical article, data sheet. C: owner's manual, question bank, study notes, forum.
 * Most were readable only in part, so "not listed" was never taken as "denied".
 */
export interface CitedDocument {
  readonly tier: "A" | "B" | "C";
  readonly document: string;
  readonly edition: string;
  readonly clause?: string;
}

const a = (document: string, edition: string, clause?: string): CitedDocument =>
  entry("A", document, edition, clause);
const b = (document: string, edition: string, clause?: string): CitedDocument =>
  entry("B", document, edition, clause);
const c = (document: string, edition = "n.d.", clause?: string): CitedDocument =>
  entry("C", document, edition, clause);

function entry(
  tier: CitedDocument["tier"],
  document: string,
  edition: string,
  clause: string | undefined,
): CitedDocument {
  return clause === undefined ? { tier, document, edition } : { tier, document, edition, clause };
}

export const citedDocuments = {
  A1: a("Job Knowledge 67: geometric shape imperfections, part 1 (The Welding Institute)", "n.d."),
  A2: a("Job Knowledge 42: porosity (The Welding Institute)", "n.d."),
  A3: a("Job Knowledge 41: lack of sidewall and inter-run fusion (The Welding Institute)", "n.d."),
  A4: a("WIS 5, Welding Inspection of Steels, section 3 (The Welding Institute)", "2007"),
  A5: a("Fillet-weld shape imperfections, reissued by a national welding body", "n.d."),
  A6: a("Travel speed in submerged arc welding (The Welding Institute), by analogy", "n.d."),
  A7: a("Handbook of Structural Steel Connection Design and Details", "n.d.", "ch. 3, p. 186"),
  A8: a("NAVEDTRA 14119", "n.d.", "ch. 10"),
  A9: a("Army TM 9-2350-247-20-3 and TM 9-2350-277-34, gas metal arc sections", "n.d."),
  A10: a("Army TB 9-2510-242-40, gas metal arc restrictions", "n.d."),
  A14: a("Ahsan et al., Welding Journal, zinc-coated lap joints", "April 2016"),
  A15: a("Gas metal arc basics, part 2: travel speed and contact tip to work distance", "2024"),
  B1: b("GMAW/FCAW Handbook", "2018", "ch. 17, pp. 155-158"),
  B2: b("Welding Fundamentals", "2017", "ch. 17, pp. 251-261"),
  B3: b("Modern Welding", "2020", "ch. 8, pp. 205-228"),
  B4: b("Gas Tungsten Arc Welding Handbook", "2021", "pp. 137-149, 278"),
  B5: b("Gas Marks on FCAW Process Welds, technical note", "n.d."),
  B6: b("Best Practices for Success in Self-Shielded Flux-Cored Welding", "n.d."),
  B7: b("Tips for Avoiding Common Flux-Cored Problems, trade article", "n.d."),
  B9: b("GMAW: Common MIG Problems and Remedies, Practical Welding Today", "Sep/Oct 1997"),
  B10: b("Possible Porosity-related Problems, ranked trade list", "n.d.", "ranks 1-7"),
  B11: b("Quick and Easy Ways to Troubleshoot Common MIG Welding Problems", "n.d."),
  B12: b("GMAW Weld Flaws, training handout", "n.d."),
  B13: b("MIG Welding: Setting the Correct Parameters", "n.d."),
  B14: b("MIG Handbook", "n.d.", "section 10, pp. 5-7"),
  B15: b("Diagnosing flux, trade question and answer", "June 2023"),
  B16: b("Eliminating porosity on galvanized steel, Practical Welding Today", "Jul/Aug 2014"),
  B17: b("Preventing porosity on weldable primer-coated joints, trade question and answer", "n.d."),
  B18: b("Combating dull weld appearance, metal-cored stainless, technical note", "n.d."),
  B19: b("Low Hydrogen Porosity, how-to", "n.d."),
  B20: b("How to prevent a welding crack from occurring, trade article", "n.d."),
  B21: b("Why Welds Crack, one-page cause and cure chart", "n.d."),
  B22: b("Welder's Handbook of a gas supplier", "n.d.", "p. 31"),
  B23: b("Welder's Handbook, rig-fabrication training", "n.d.", "pp. 14, 16"),
  B24: b("Welding glossary: undercut, crater cracks, bead forming", "n.d."),
  B26: b("Welding textbook: table of flux-cored positions, shielding and polarity", "n.d.", "ch. 23"),
  B28: b("E309LT0-3 product data sheet", "n.d."),
  B31: b("Rainbow Colors in Stainless Steel Welding", "n.d."),
  B34: b("Two articles on contact-tip wear", "n.d."),
  B35: b("Wire-feed maintenance article", "n.d."),
  B36: b("Welding glossary: slag", "n.d."),
  C1: c("Apprenticeship study notes: weld faults, wire-feed troubleshooting, gases, wires"),
  C2: c("Trade reference notes: self-shielded and gas metal arc set-up, positions, stainless, defects"),
  C3: c("Covered-electrode owner's manual: horizontal fillets and lap welds"),
  C4: c("Covered-electrode fault table of two machine manuals"),
  C5: c("Covered-electrode fault page: slag, undercut, lack of fusion"),
  C6: c("Covered-electrode bead-appearance page"),
  C7: c("Covered-electrode trouble chart: porosity, spatter"),
  C8: c("Small wire-feed manual: electrode extension"),
  C9: c("Small wire-feed manual: amps per thickness, wire feed per amp"),
  C10: c("Older gas metal arc wire-feed data card: short-circuit and spray ranges"),
  C11: c("Wire-feed manual: travel speed"),
  C12: c("Flux-cored troubleshooting guide, opening only"),
  C13: c("Covered-electrode defects guide, opening only"),
  C14: c("Practitioners' discussion of worm holes in flux-cored welds", "Dec 2012"),
  C15: c("External Defects, quality notes", "2019"),
  C16: c("Practice-question banks and answer pages for welding tests"),
  C17: c("Vocational examination model answers"),
  C18: c("Welding-inspection practice papers"),
  C19: c("Bilingual trade-school question bank"),
  C20: c("Two classroom study guides"),
  C21: c("Competency-based learning handout on visual discontinuities"),
  C22: c("Practitioners' build-log discussion"),
  C23: c("Engineers' discussion of 308L-17 bead colour"),
  C25: c("115 V machine field-test article"),
  C26: c("Gas metal arc study cards, technical college"),
  C27: c("Marine engineering course notes"),
  C28: c("Questions and answers on slag"),
  C29: c("Aviation welding article on lack of fusion", "2020"),
  C30: c("Wire-feed manual: stick-out"),
  C31: c("Classroom slides on covered-electrode welding: travel speed, arc length"),
  C32: c("Covered-electrode manual: multi-run and horizontal-vertical fillets"),
  C33: c("Wire-feed manual: torch travel"),
  C34: c("Article on straight and reverse polarity"),
  C35: c("Note on moisture pick-up by covered electrodes"),
  C36: c("Inconsistent-arc repair guide for a wire-feed machine"),
  C37: c("Work-clamp notes in three small machine manuals"),
  C38: c("Summary note on solidification cracks"),
  C39: c("Multi-process machine manual: weave and pass thickness"),
} as const satisfies Record<string, CitedDocument>;

export type DocumentId = keyof typeof citedDocuments;
