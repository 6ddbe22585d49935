import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));

export interface SourceText {
  readonly file: string;
  readonly text: string;
}

/** Every file of pages and components whose name ends so. */
export const screenFiles = (...ends: readonly string[]): readonly SourceText[] =>
  ["app", "components"].flatMap((folder) =>
    readdirSync(`${root}/${folder}`, { recursive: true, encoding: "utf8" })
      .filter((name) => ends.some((end) => name.endsWith(end)))
      .map((name) => ({
        file: `${folder}/${name}`,
        text: readFileSync(`${root}/${folder}/${name}`, "utf8"),
      })),
  );

export type Tokens = Readonly<Record<string, string>>;

/** The colours of both looks, as the theme says them; what the dark one does not say it has from the light one. */
export function themeColours(css: string): { readonly light: Tokens; readonly dark: Tokens } {
  const light = tokensAfter(css, ":root {");
  return { light, dark: { ...light, ...tokensAfter(css, ':root[data-look="dark"] {') } };
}

function tokensAfter(css: string, opening: string): Tokens {
  const from = css.indexOf(opening);
  if (from < 0) throw new Error(`The theme has no ${opening}`);
  const body = css.slice(from + opening.length, css.indexOf("}", from));
  return Object.fromEntries(
    [...body.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map(([, name = "", hex = ""]) => [name, hex]),
  );
}

/** WCAG 2.2, "relative luminance": of an sRGB colour written #rrggbb, 0 to 1. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** WCAG 2.2, "contrast ratio": 1 to 21. */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}
