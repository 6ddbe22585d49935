import { Linter } from "eslint";
import tseslint from "typescript-eslint";
import { expect, test } from "vitest";
import { functionLength } from "./setup/function-length.mjs";

const linter = new Linter();

function complaints(code: string, options: object = {}): readonly string[] {
  const found = linter.verify(
    code,
    [
      {
        files: ["**/*.tsx"],
        languageOptions: { parser: tseslint.parser as Linter.Parser },
        plugins: { house: { rules: { "function-length": functionLength } } },
        rules: { "house/function-length": ["error", options] },
      },
    ],
    "x.tsx",
  );
  return found.map(({ message }) => message);
}

const lines = (count: number, line: string): string => `${line}\n`.repeat(count);
const layout = (count: number): string => `<div>\n${lines(count - 2, "<b />")}</div>`;

test("a function is up to 40 lines, with its first and its last", () => {
  expect(complaints(`function f() {\n${lines(38, "g();")}}`)).toEqual([]);
  expect(complaints(`function f() {\n${lines(39, "g();")}}`)).toEqual(["f is 41 lines; 40 is the most."]);
  expect(complaints(`const f = () => {\n${lines(39, "g();")}};`)).toHaveLength(1);
});

test("layout may be longer, up to 80", () => {
  expect(complaints(`function F() {\nreturn (\n${layout(76)}\n);\n}`)).toEqual([]);
  expect(complaints(`function F() {\nreturn (\n${layout(77)}\n);\n}`)).toEqual([
    "F is 81 lines; with JSX 80 is the most.",
  ]);
});

test("but not what is no layout: before the JSX, or in a handler within it", () => {
  // Beside the JSX there are the two braces and the two brackets of the return.
  expect(complaints(`function F() {\n${lines(16, "g();")}return (\n${layout(40)}\n);\n}`)).toEqual([]);
  expect(complaints(`function F() {\n${lines(17, "g();")}return (\n${layout(40)}\n);\n}`)).toEqual([
    "F is 61 lines, 21 of them not layout; beyond 40 lines that may be 20.",
  ]);
  const handler = `<b onClick={() => {\n${lines(17, "g();")}}} />\n`;
  expect(complaints(`function F() {\nreturn (\n<div>\n${handler}${layout(40)}\n</div>\n);\n}`)).toEqual([
    "F is 65 lines, 23 of them not layout; beyond 40 lines that may be 20.",
  ]);
});

test("what is known to be longer is let be, with what is written in it", () => {
  const code = `function f() {\nreturn () => {\n${lines(50, "g();")}};\n}`;
  expect(complaints(code)).toHaveLength(2);
  expect(complaints(code, { except: ["f"] })).toEqual([]);
});
