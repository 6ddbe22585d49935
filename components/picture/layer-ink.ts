import type { LayerInk } from "@/lib/course";

/** The instructor's hand: the theme's green, which no mark of a student has, and heavier than any of them. */
export const layerInk: LayerInk = {
  line: "#1d6b3a",
  casing: "#ffffff",
  plate: "#ffffff",
  words: "#14171c",
  selected: "#e8b83a",
};
