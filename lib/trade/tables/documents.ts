/**
 * The bibliography: every document that a table, a rule or a sentence of this house leans on, once, under an id that
 * says what it is. Where a fact stands in it and how sure we are is said at the fact: `cite("aws-d1-1", "seen-older", {
 * clause: "7.23" })`. Most could be read only in part, so "not listed there" is never taken as "denied".
 */
export interface BibliographyEntry {
  /** How far a document is to be trusted; the first of these that names a thing is shown for it. */
  readonly standing: Standing;
  readonly title: string;
  /** null: it bears none, or each fact says which edition it means. */
  readonly edition: string | null;
  /** The part that was read, where no fact says it more closely; null: the whole, or each fact says it. */
  readonly part: string | null;
}

/**
 * From the most to the least to be trusted.
 * - `standard`: a standard, code or rule of law.
 * - `institute`: institute, government, peer-reviewed paper, engineering handbook.
 * - `trade`: textbook, trade press, technical article, data sheet.
 * - `informal`: owner's manual, question bank, study notes, discussion.
 */
export const standings = ["standard", "institute", "trade", "informal"] as const;
export type Standing = (typeof standings)[number];

const entry =
  (standing: Standing, usual: string | null) =>
  (title: string, edition: string | null = usual, part: string | null = null): BibliographyEntry => ({
    standing,
    title,
    edition,
    part,
  });
/** No date on it. */
const UNDATED = "n.d.";
const standard = entry("standard", null);
const institute = entry("institute", UNDATED);
const trade = entry("trade", UNDATED);
const informal = entry("informal", UNDATED);

export const documents = {
  // Standards, codes and rules of law.
  "acgih-manganese": standard("ACGIH limit for manganese, 2013"),
  "ansi-asme-y14-1": standard("ANSI/ASME Y14.1"),
  "ansi-z49-1": standard("ANSI Z49.1, safety in welding, cutting and allied processes"),
  "ansi-z87-1": standard("ANSI/ISEA Z87.1, eye protection"),
  "api-1104": standard("API 1104"),
  "asme-b31-3": standard("ASME B31.3"),
  "asme-viii-1": standard("ASME BPVC VIII-1"),
  "asme-ix": standard("ASME BPVC IX"),
  "aws-a3-0": standard("AWS A3.0"),
  "aws-a5-1": standard("AWS A5.1/A5.1M, carbon steel covered electrodes"),
  "aws-a5-4": standard("AWS A5.4/A5.4M, stainless covered electrodes"),
  "aws-a5-9": standard("AWS A5.9/A5.9M, bare stainless electrodes and rods"),
  "aws-a5-18": standard("AWS A5.18/A5.18M, carbon steel solid electrodes and rods"),
  "aws-a5-20": standard("AWS A5.20/A5.20M, carbon steel flux-cored electrodes"),
  "aws-a5-22": standard("AWS A5.22/A5.22M, stainless flux-cored and metal-cored electrodes"),
  "aws-d1-1": standard("AWS D1.1/D1.1M"),
  "aws-d1-3": standard("AWS D1.3"),
  "aws-d1-6": standard("AWS D1.6/D1.6M"),
  "en-1011-1": standard("EN 1011-1", "as quoted in print"),
  "en-1011-2": standard("EN 1011-2", "as quoted in print"),
  "euro-coin-sizes": standard("Euro coins, technical specifications"),
  "iarc-welding-fume": standard("IARC classification of welding fume"),
  "iso-216": standard("ISO 216"),
  "iso-2553": standard("ISO 2553"),
  "iso-5817": standard("ISO 5817"),
  "iso-7810": standard("ISO/IEC 7810"),
  "iso-9606-1": standard("ISO 9606-1"),
  "iso-10042": standard("ISO 10042"),
  "iso-14253-1": standard("ISO 14253-1", "2017"),
  "iso-15614-1": standard("ISO 15614-1"),
  "iso-17637": standard("ISO 17637"),
  "iso-17639": standard("ISO 17639", "2022"),
  "iso-17659": standard("ISO 17659"),
  "iso-tr-18491": standard("ISO/TR 18491"),
  "jcgm-106": standard("JCGM 106", "2012"),
  "osha-hexavalent-chromium": standard("OSHA 29 CFR 1910.1026, hexavalent chromium", "2006"),
  "sheet-gauge-manufacturers": standard("Manufacturers' Standard Gauge for sheet steel"),
  "sheet-gauge-united-states": standard(
    "United States Standard Gauge for sheet and plate iron and steel, Act of 3 March 1893",
  ),
  "ufgs-15216n": standard("UFGS 15216N"),
  "us-coin-sizes": standard("US Mint, coin specifications"),

  // Institutes, government, papers, engineering handbooks.
  "army-tb-9-2510": institute("Army TB 9-2510-242-40, gas metal arc restrictions"),
  "army-tm-5-5420": institute("Army TM 5-5420-279-23, appendix K, visual examination"),
  "army-tm-9-2350": institute("Army TM 9-2350-247-20-3 and TM 9-2350-277-34, gas metal arc sections"),
  "fillet-shape-imperfections": institute(
    "Fillet-weld shape imperfections, reissued by a national welding body",
  ),
  "hexavalent-chromium-guide": institute(
    "Instructor guide on hexavalent chromium, citing the US OSHA rule of 2006",
    null,
  ),
  "job-knowledge-41-fusion": institute(
    "Job Knowledge 41: lack of sidewall and inter-run fusion (The Welding Institute)",
  ),
  "job-knowledge-42-porosity": institute("Job Knowledge 42: porosity (The Welding Institute)"),
  "job-knowledge-67-shape": institute(
    "Job Knowledge 67: geometric shape imperfections, part 1 (The Welding Institute)",
  ),
  "navedtra-14119": institute("NAVEDTRA 14119", UNDATED, "ch. 10"),
  "steel-connection-handbook": institute(
    "Handbook of Structural Steel Connection Design and Details",
    UNDATED,
    "ch. 3, p. 186",
  ),
  "submerged-arc-travel": institute(
    "Travel speed in submerged arc welding (The Welding Institute), by analogy",
  ),
  "welding-inspection-of-steels": institute(
    "WIS 5, Welding Inspection of Steels, section 3 (The Welding Institute)",
    "2007",
  ),
  "zinc-coated-laps": institute("Ahsan et al., Welding Journal, zinc-coated lap joints", "April 2016"),

  // Textbooks, trade press, technical articles, data sheets.
  "advanced-welding-processes": trade("Norrish, Advanced Welding Processes", null),
  "common-mig-problems": trade(
    "GMAW: Common MIG Problems and Remedies, Practical Welding Today",
    "Sep/Oct 1997",
  ),
  "contact-tip-wear": trade("Two articles on contact-tip wear"),
  "crack-chart": trade("Why Welds Crack, one-page cause and cure chart"),
  "crack-prevention": trade("How to prevent a welding crack from occurring, trade article"),
  "deposition-handbook": trade("Filler-metal handbook: deposition efficiency by process"),
  "diagnosing-flux": trade("Diagnosing flux, trade question and answer", "June 2023"),
  "dull-stainless": trade("Combating dull weld appearance, metal-cored stainless, technical note"),
  "e309l-both-gases-sheet": trade("E309LT0/T1-1/-4 product data page"),
  "e309l-gasless-sheet": trade("E309LT0-3 product data sheet"),
  "e310-sheet": trade("E310T0/T1-1/-4 product data sheet", "ISO 9001:2008 era"),
  "e70c-6m-sheet": trade("E70C-6M metal-cored wire (AWS A5.18), manual page: current, feed and deposition"),
  "filler-cost-handbook": trade("Filler-cost handbook"),
  "filler-metal-course": trade("Filler-metal home-study course, lesson VII", "2000"),
  "flux-cored-class-table": trade(
    "Welding textbook: flux-cored electrode classes, positions, shielding and polarity",
    UNDATED,
    "ch. 23",
  ),
  "galvanised-porosity": trade(
    "Eliminating porosity on galvanized steel, Practical Welding Today",
    "Jul/Aug 2014",
  ),
  "gas-marks": trade("Gas Marks on FCAW Process Welds, technical note"),
  "gas-suppliers-handbook": trade("Welder's Handbook of a gas supplier", UNDATED, "p. 31"),
  "glossary-slag": trade("Welding glossary: slag"),
  "glossary-undercut-craters": trade("Welding glossary: undercut, crater cracks, bead forming"),
  "gmaw-fcaw-handbook": trade("GMAW/FCAW Handbook", "2018", "ch. 17, pp. 155-158"),
  "low-hydrogen-porosity": trade("Low Hydrogen Porosity, how-to"),
  "mig-handbook": trade("MIG Handbook", UNDATED, "section 10, pp. 5-7"),
  "mig-parameters": trade("MIG Welding: Setting the Correct Parameters"),
  "mig-troubleshooting": trade("Quick and Easy Ways to Troubleshoot Common MIG Welding Problems"),
  "modern-welding": trade("Modern Welding", "2020", "ch. 8, pp. 205-228"),
  "porosity-ranking": trade("Possible Porosity-related Problems, ranked trade list", UNDATED, "ranks 1-7"),
  "primer-porosity": trade("Preventing porosity on weldable primer-coated joints, trade question and answer"),
  "rig-training-handbook": trade("Welder's Handbook, rig-fabrication training", UNDATED, "pp. 14, 16"),
  "self-shielded-best-practices": trade("Best Practices for Success in Self-Shielded Flux-Cored Welding"),
  "stainless-colours": trade("Rainbow Colors in Stainless Steel Welding"),
  "tungsten-arc-handbook": trade("Gas Tungsten Arc Welding Handbook", "2021", "pp. 137-149, 278"),
  "weld-flaws-handout": trade("GMAW Weld Flaws, training handout"),
  "welding-fundamentals": trade("Welding Fundamentals", "2017", "ch. 17, pp. 251-261"),
  "wire-feed-maintenance": trade("Wire-feed maintenance article"),

  // Owner's manuals, question banks, study notes, discussions.
  "apprenticeship-notes": informal(
    "Apprenticeship study notes: weld faults, wire-feed set-up and troubleshooting, gases, wires",
  ),
  "aviation-fusion-article": informal("Aviation welding article on lack of fusion", "2020"),
  "bilingual-question-bank": informal("Bilingual trade-school question bank"),
  "build-log-discussion": informal("Practitioners' build-log discussion"),
  "classroom-study-guides": informal("Two classroom study guides"),
  "covered-bead-appearance": informal("Covered-electrode bead-appearance page"),
  "covered-defects-guide": informal("Covered-electrode defects guide, opening only"),
  "covered-fault-page": informal("Covered-electrode fault page: slag, undercut, lack of fusion"),
  "covered-fault-table": informal("Covered-electrode fault table of two machine manuals"),
  "covered-fillet-manual": informal("Covered-electrode owner's manual: horizontal fillets and lap welds"),
  "covered-multi-run-manual": informal("Covered-electrode manual: multi-run and horizontal-vertical fillets"),
  "covered-slides": informal("Classroom slides on covered-electrode welding: travel speed, arc length"),
  "covered-trouble-chart": informal("Covered-electrode trouble chart: porosity, spatter"),
  "electrode-current-notes": informal(
    "Covered-electrode current notes (1/8 in rods, overhead rule, core-diameter rule)",
  ),
  "electrode-moisture-note": informal("Note on moisture pick-up by covered electrodes"),
  "external-defects-notes": informal("External Defects, quality notes", "2019"),
  "flux-cored-troubleshooting": informal("Flux-cored troubleshooting guide, opening only"),
  "gas-metal-arc-cards": informal("Gas metal arc study cards, technical college"),
  "inconsistent-arc-guide": informal("Inconsistent-arc repair guide for a wire-feed machine"),
  "inspection-practice-papers": informal("Welding-inspection practice papers"),
  "marine-course-notes": informal("Marine engineering course notes"),
  "multi-process-manual": informal("Multi-process machine manual: weave and pass thickness"),
  "polarity-article": informal("Article on straight and reverse polarity"),
  "practice-questions": informal("Practice-question banks and answer pages for welding tests"),
  "slag-questions": informal("Questions and answers on slag"),
  "small-machine-test": informal("115 V machine field-test article"),
  "small-wire-manual-extension": informal("Small wire-feed manual: electrode extension, slag removal"),
  "small-wire-manual-settings": informal("Small wire-feed manual: amps per thickness, wire feed per amp"),
  "solid-wire-data-card": informal(
    "Older wire-feed data card for solid wire: short-circuit and spray ranges",
  ),
  "solidification-cracks-note": informal("Summary note on solidification cracks"),
  "stainless-colour-discussion": informal("Engineers' discussion of 308L-17 bead colour"),
  "torch-travel-manual": informal("Wire-feed manual: torch travel"),
  "trade-reference-notes": informal(
    "Trade reference notes: self-shielded and gas metal arc set-up, positions, stainless, defects; restating data sheets",
  ),
  "travel-speed-manual": informal("Wire-feed manual: travel speed"),
  "visual-discontinuities-handout": informal("Competency-based learning handout on visual discontinuities"),
  "vocational-model-answers": informal("Vocational examination model answers"),
  "wire-stick-out-manual": informal("Wire-feed manual: stick-out"),
  "work-clamp-notes": informal("Work-clamp notes in three small machine manuals"),
  "worm-hole-discussion": informal("Practitioners' discussion of worm holes in flux-cored welds", "Dec 2012"),
} as const satisfies Record<string, BibliographyEntry>;

export type DocumentId = keyof typeof documents;
