export { beadFacts, FACTS_VERSION, type BeadFacts, type KeptCard } from "./bead-facts";
export { electrodeWords } from "./synonyms";
