import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { layerInk } from "@/components/picture/layer-ink";
import { highlight, palette } from "@/components/picture/palette";

const theme = readFileSync(new URL("../../../app/theme.css", import.meta.url), "utf8");
const token = (name: string): string => {
  const value = new RegExp(`--${name}:\\s*(#[0-9a-f]{6})`).exec(theme)?.[1];
  if (value === undefined) throw new Error(`theme.css has no --${name}`);
  return value;
};

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
/** WCAG 2.2, relative contrast. */
function contrast(a: string, b: string): number {
  const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light! + 0.05) / (dark! + 0.05);
}

test("the inks are the theme's", () => {
  const { gas, shape, fusion, crack, slag, surface } = palette.inks;
  expect([gas, shape, fusion, crack, slag, surface].map((ink) => ink.line)).toEqual(
    ["blue", "purple", "bronze", "danger", "ink", "straw"].map(token),
  );
  expect(highlight.fill).toBe(token("straw"));
  expect([layerInk.line, layerInk.words, layerInk.selected]).toEqual(["ok", "ink", "straw"].map(token));
});

test("every ink stands out from its casing and carries its letters", () => {
  for (const { line, casing, onLine } of Object.values(palette.inks)) {
    expect(contrast(line, casing)).toBeGreaterThan(4.5);
    expect(contrast(line, onLine)).toBeGreaterThan(4.5);
  }
});
