export { beadFacts, FACTS_VERSION, type BeadFacts, type KeptCard } from "./bead-facts";
export { foldText } from "./fold";
export { electrodeWords } from "./synonyms";
