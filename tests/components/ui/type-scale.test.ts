import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const styleSheets = ["app", "components"].flatMap((folder) =>
  readdirSync(`${root}/${folder}`, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".css"))
    .map((name) => `${folder}/${name}`),
);

/** Font sizes of a style sheet that are lengths of their own instead of a step of the scale. */
const ownSizes = (css: string): readonly string[] =>
  [...css.matchAll(/[^-]font(?:-size)?:([^;]*);/g)]
    .map(([, value = ""]) => value.trim())
    .filter((value) => !value.startsWith("clamp(") && /(?<![\w.-])[\d.]+(?:px|pt|em|rem|mm)/.test(value));

test("type sizes are steps of the scale in theme.css", () => {
  expect(styleSheets.length).toBeGreaterThan(30);
  const found = styleSheets.flatMap((file) =>
    ownSizes(readFileSync(`${root}/${file}`, "utf8")).map((value) => `${file}: ${value}`),
  );
  expect(found).toEqual([]);
});

test("a size of its own would be noticed", () => {
  expect(ownSizes("a { font-size: 16px; }")).toEqual(["16px"]);
  expect(ownSizes("a { font: 600 12pt/1.2 var(--font-text); }")).toHaveLength(1);
  expect(ownSizes("a { font: 600 var(--type-3)/1.2 var(--font-text); }")).toEqual([]);
});

test("every step used is a step there is", () => {
  const theme = readFileSync(`${root}/app/theme.css`, "utf8");
  const steps = new Set([...theme.matchAll(/--((?:type|paper)-\d):/g)].map(([, name]) => name));
  expect(steps.size).toBe(15);
  const used = styleSheets.flatMap((file) =>
    [...readFileSync(`${root}/${file}`, "utf8").matchAll(/var\(--((?:type|paper)-\d)\)/g)].map(
      ([, name]) => name,
    ),
  );
  expect([...steps].filter((step) => !used.includes(step))).toEqual([]);
  expect(used.filter((step) => !steps.has(step))).toEqual([]);
});

/** Weights of a style sheet that no face of the layout has: text comes in 400 and 600 (700 is set in it), display in 700. */
const missingWeights = (css: string): readonly string[] =>
  [...css.matchAll(/[^-](font(?:-weight)?:[^;]*);/g)]
    .map(([, value = ""]) => value)
    .filter((value) => /\b(?:[12358]00|900)\b/.test(value) || /\b600\b.*font-display/.test(value));

test("no weight is asked for that the three faces do not have", () => {
  const layout = readFileSync(`${root}/app/layout.tsx`, "utf8");
  expect([...layout.matchAll(/@fontsource\/([\w/-]+)\.css/g)].map(([, face]) => face)).toEqual([
    "barlow/400",
    "barlow/600",
    "barlow-condensed/700",
  ]);
  const found = styleSheets.flatMap((file) =>
    missingWeights(readFileSync(`${root}/${file}`, "utf8")).map((value) => `${file}: ${value}`),
  );
  expect(found).toEqual([]);
  expect(missingWeights("a { font: 600 var(--type-3)/1.2 var(--font-display); }")).toHaveLength(1);
  expect(missingWeights("a { font-weight: 500; }")).toHaveLength(1);
});
