import type { ScenePalette } from "@/lib/marks";

const light = "#ffffff";
const ink = "#14171c";

/**
 * Inks of the marks, from the temper scale of the theme. A canvas cannot read CSS custom properties, so the values
 * stand here a second time; a test compares them with app/theme.css.
 */
export const palette: ScenePalette = {
  inks: {
    gas: { line: "#1f5aa6", casing: light, onLine: light },
    shape: { line: "#6b2f74", casing: light, onLine: light },
    fusion: { line: "#96541a", casing: light, onLine: light },
    crack: { line: "#a8201a", casing: light, onLine: light },
    slag: { line: ink, casing: light, onLine: light },
    // Straw is the one light ink: it carries a dark casing and dark letters.
    surface: { line: "#e8b83a", casing: ink, onLine: ink },
    guide: { line: ink, casing: light, onLine: light },
  },
  text: ink,
  halo: light,
};

/** Laid under what is selected and used for handles and the cross-hair. */
export const highlight = { fill: "#e8b83a", line: ink, light } as const;
