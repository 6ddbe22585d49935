import type { ImperfectionId } from "../imperfections";

/** What an eye sees before it knows a name: the first question to somebody who is not sure. */
export interface Appearance {
  readonly id: string;
  /** Follows "I see ...". */
  readonly name: string;
  /** The likeliest first; the first gives the picture. */
  readonly kinds: readonly ImperfectionId[];
}

/** A kind may stand under several: it is looked for by what it seems to be. Common practice, no source. */
export const appearances: readonly Appearance[] = [
  {
    id: "hole",
    name: "a hole or a pit",
    kinds: ["surface-porosity", "wormhole", "gas-mark", "crater-pipe", "burn-through", "open-crater"],
  },
  {
    id: "line",
    name: "a fine dark line or a crack",
    kinds: [
      "longitudinal-crack",
      "crater-crack",
      "transverse-crack",
      "toe-crack",
      "lack-of-fusion",
      "branching-crack",
      "radiating-crack",
      "crack-group",
      "incomplete-penetration",
    ],
  },
  {
    id: "edge",
    name: "something wrong at the edge of the bead",
    kinds: ["undercut", "overlap", "steep-toe", "trapped-slag", "lack-of-fusion", "toe-crack"],
  },
  {
    id: "metal-missing",
    name: "metal missing or too little of it",
    kinds: [
      "underfill",
      "undersized",
      "concave-face",
      "missing-length",
      "open-crater",
      "root-concavity",
      "incomplete-penetration",
      "underflushing",
    ],
  },
  {
    id: "metal-too-much",
    name: "too much metal, a lump or a sag",
    kinds: ["convex-bead", "oversized", "sagging", "overlap", "excess-penetration", "poor-start"],
  },
  {
    id: "bead-uneven",
    name: "a bead that is uneven or off its line",
    kinds: ["uneven-width", "irregular-surface", "wandering", "uneven-legs", "flat-wide-bead", "poor-start"],
  },
  {
    id: "on-it",
    name: "something stuck on or in it",
    kinds: [
      "spatter",
      "stuck-slag",
      "trapped-slag",
      "wire-stub",
      "burnback",
      "copper-inclusion",
      "tungsten-inclusion",
    ],
  },
  {
    id: "plate",
    name: "a mark or a colour on the plate",
    kinds: ["arc-strike", "temper-colour", "grinding-mark", "chipping-mark", "torn-surface", "spatter"],
  },
  {
    id: "fit",
    name: "plates that do not fit",
    kinds: ["misalignment", "angular-misalignment", "wide-root-gap"],
  },
];
