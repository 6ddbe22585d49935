import type { ImperfectionId } from "./imperfections";

/**
 * Small things that lie on a bead by the dozen, so that one mark round a patch says more than fifty marks: of these a person
 * is asked about how many there are. Wormholes are not among them: the codes judge the length of each. Common practice, no
 * source.
 */
const inNumbers: ReadonlySet<ImperfectionId> = new Set<ImperfectionId>([
  "surface-porosity",
  "gas-mark",
  "spatter",
  "chipping-mark",
]);

export const comesInNumbers = (id: ImperfectionId): boolean => inNumbers.has(id);
