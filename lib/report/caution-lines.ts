import type { Diagnosis } from "@/lib/diagnose";

/** What holds of every bead and every paper. */
export const generalCautions: readonly string[] = [
  "Acceptance belongs to the governing code, the contract and qualified inspection personnel, not to this sheet.",
  "Fusion and anything below the surface cannot be seen in a photo. A crack, suspected lack of fusion or arc strike goes to a qualified inspector before repair.",
];

const startingPoints =
  "Windows are starting points: the wire's own data sheet and the qualified procedure govern.";

/** Where there is no diagnosis to say it of this bead. */
const usualProtection: readonly string[] = [
  "Electric shock kills: switch off and unplug before you touch leads, lugs, tip or drive rolls; dry gloves, dry floor.",
  "Slag is hot and flies: safety glasses with side shields under the hood, gloves, and wait until it no longer glows.",
  "Keep your head out of the plume and ventilate. Flux-cored fume carries manganese; stainless adds hexavalent chromium; zinc gives metal fume fever.",
];

/** A note that is told like protection: heat put in by a change. */
const alsoTold = ["preheat"];

/**
 * The cautions of one bead, a line each: those of every bead, and what protects whoever runs this one and makes the change
 * proposed for it. null: it could not be diagnosed.
 */
export function cautionLines(diagnosis: Diagnosis | null): readonly string[] {
  const own =
    diagnosis === null
      ? usualProtection
      : diagnosis.cautions
          .filter(({ level, code }) => level === "protect" || alsoTold.includes(code))
          .map(({ sentence }) => sentence);
  return [...new Set([...own, ...generalCautions, startingPoints])];
}
