import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { contrast, screenFiles, themeColours, type Tokens } from "../setup/theme";
import { controls, decor, text } from "./colour-pairs";

const css = readFileSync(new URL("../../app/theme.css", import.meta.url), "utf8");
const looks = themeColours(css);

/** Each pair of the tables that cannot be told apart well enough. */
function tooFaint(tokens: Tokens): readonly string[] {
  const of = (table: typeof text, least: number): readonly string[] =>
    Object.entries(table).flatMap(([on, unders]) =>
      unders
        .map((under) => ({ under, ratio: contrast(colour(tokens, on), colour(tokens, under)) }))
        .filter(({ ratio }) => ratio < least)
        .map(({ under, ratio }) => `${on} on ${under}: ${ratio.toFixed(2)} of ${least}`),
    );
  return [...of(text, 4.5), ...of(controls, 3)];
}

function colour(tokens: Tokens, name: string): string {
  const found = tokens[name];
  if (found === undefined) throw new Error(`The theme has no colour --${name}`);
  return found;
}

test("the ratio is that of WCAG", () => {
  // White on black is 21 by definition; #767676 is the well known lightest grey that is read on white (4.54), #949494 the
  // lightest that bounds a control (3.03): widely published values, from memory.
  expect(contrast("#ffffff", "#000000")).toBeCloseTo(21, 10);
  expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
  expect(contrast("#949494", "#ffffff")).toBeCloseTo(3.03, 2);
  expect(contrast("#1f5aa6", "#1f5aa6")).toBe(1);
});

test.each(["light", "dark"] as const)("the %s look can be read and used", (look) => {
  expect(tooFaint(looks[look])).toEqual([]);
});

test.each(["light", "dark"] as const)(
  "a spoiled colour of the %s look is noticed, whichever it is",
  (look) => {
    const tokens = looks[look];
    const paired = new Set([...Object.keys(text), ...Object.keys(controls)]);
    for (const name of paired) {
      const under = (text[name] ?? controls[name] ?? [])[0] ?? "";
      expect(tooFaint({ ...tokens, [name]: colour(tokens, under) }).join(), name).toContain(
        `${name} on ${under}`,
      );
    }
  },
);

/** What the style sheets do with colours: [what, on what or null] for text, and what edges and rings are drawn in. */
function pairsUsed(sheet: string): {
  texts: readonly (readonly [string, string | null])[];
  edges: readonly string[];
} {
  const rules = [...sheet.replace(/\/\*[\s\S]*?\*\//g, "").matchAll(/\{([^{}]*)\}/g)].map(
    ([, body = ""]) => body,
  );
  return {
    texts: rules.flatMap((body) => {
      const on = /(?:^|[\s;])color:\s*var\(--([\w-]+)\)/.exec(body)?.[1];
      const under = /background(?:-color)?:\s*var\(--([\w-]+)\)/.exec(body)?.[1] ?? null;
      return on === undefined ? [] : [[on, under] as const];
    }),
    edges: rules.flatMap((body) =>
      [...body.matchAll(/(?:border|outline)[\w-]*:[^;]*var\(--([\w-]+)\)/g)]
        .map(([, name = ""]) => name)
        .filter((name) => !/^(radius|space|temper|tap)/.test(name)),
    ),
  };
}

test("every pair that a style sheet uses stands in the tables", () => {
  const used = screenFiles(".css").map(({ file, text: sheet }) => ({ file, ...pairsUsed(sheet) }));
  const missing = used.flatMap(({ file, texts, edges }) => [
    ...texts
      .filter(([on, under]) => !(under === null ? text[on] : text[on]?.includes(under)))
      .map(([on, under]) => `${file}: text ${on} on ${under ?? "what lies under it"}`),
    ...edges
      .filter((name) => !(name in controls) && !decor.includes(name))
      .map((name) => `${file}: an edge in ${name}`),
  ]);
  expect(used.flatMap(({ texts }) => texts).length).toBeGreaterThan(100);
  expect(missing).toEqual([]);
});

test("a pair that is in no table would be noticed", () => {
  expect(pairsUsed(".a { color: var(--straw); background: var(--panel); }").texts).toEqual([
    ["straw", "panel"],
  ]);
  expect(pairsUsed(".a { background: var(--ink); color: var(--bronze) }").texts).toEqual([["bronze", "ink"]]);
  expect(pairsUsed(".a { border-left: 6px solid var(--straw); }").edges).toEqual(["straw"]);
});

/** Rules whose text is lighter or darker than their own ground: with a person's own colours the browser lays a plate under it. */
const turned = (sheet: string): readonly string[] =>
  [...sheet.matchAll(/\{([^{}]*)\}/g)]
    .map(([, body = ""]) => body)
    .filter((body) => /(?:^|[\s;])color:\s*var\(--(?:on-ink|on-straw|band)\)/.test(body))
    .filter((body) => !body.includes("forced-color-adjust: none"));

test("what is filled can be read with colours of the person's own", () => {
  expect(screenFiles(".css").flatMap(({ file, text: sheet }) => turned(sheet).map(() => file))).toEqual([]);
  expect(turned(".a { background: var(--ink); color: var(--on-ink); }")).toHaveLength(1);
});
