import { expect, test } from "vitest";
import { lintCode } from "./setup/lint-code";

const complaints = (codes: readonly string[], options?: object): readonly string[][] =>
  lintCode("function-length", codes, options);

const lines = (count: number, line: string): string => `${line}\n`.repeat(count);
const layout = (count: number): string => `<div>\n${lines(count - 2, "<b />")}</div>`;

test("a function is up to 40 lines, with its first and its last", () => {
  const [fits, long, arrow] = complaints([
    `function f() {\n${lines(38, "g();")}}`,
    `function f() {\n${lines(39, "g();")}}`,
    `const f = () => {\n${lines(39, "g();")}};`,
  ]);
  expect(fits).toEqual([]);
  expect(long).toEqual(["f is 41 lines; 40 is the most."]);
  expect(arrow).toHaveLength(1);
});

test("layout may be longer, up to 80; what is no layout may not: before the JSX, or in a handler within it", () => {
  const handler = `<b onClick={() => {\n${lines(17, "g();")}}} />\n`;
  const [fits, long, before, tooMuchBefore, within] = complaints([
    `function F() {\nreturn (\n${layout(76)}\n);\n}`,
    `function F() {\nreturn (\n${layout(77)}\n);\n}`,
    // Beside the JSX there are the two braces and the two brackets of the return.
    `function F() {\n${lines(16, "g();")}return (\n${layout(40)}\n);\n}`,
    `function F() {\n${lines(17, "g();")}return (\n${layout(40)}\n);\n}`,
    `function F() {\nreturn (\n<div>\n${handler}${layout(40)}\n</div>\n);\n}`,
  ]);
  expect(fits).toEqual([]);
  expect(long).toEqual(["F is 81 lines; with JSX 80 is the most."]);
  expect(before).toEqual([]);
  expect(tooMuchBefore).toEqual(["F is 61 lines, 21 of them not layout; beyond 40 lines that may be 20."]);
  expect(within).toEqual(["F is 65 lines, 23 of them not layout; beyond 40 lines that may be 20."]);
});

test("what is known to be longer is let be, with what is written in it", () => {
  const code = `function f() {\nreturn () => {\n${lines(50, "g();")}};\n}`;
  expect(complaints([code])[0]).toHaveLength(2);
  expect(complaints([code], { except: ["f"] })[0]).toEqual([]);
});
