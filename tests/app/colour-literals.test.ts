import { expect, test } from "vitest";
import { screenFiles, themeColours } from "../setup/theme";

/** What cannot ask the theme, and must say the same. */
const byHand = ["app/layout.tsx", "app/manifest.ts", "app/offline/route.ts"];
/** Inks of marks: they lie on photographs, sheets and PDFs and are the same in every look. */
const onPhotographs = "components/picture/";

const named = "white|black|gray|grey|red|green|blue|orange|yellow|purple|silver|navy|teal|maroon";

/** Colours written out: #fff, rgb(...), or by a name where a colour stands. */
function colourLiterals(text: string): readonly string[] {
  const plain = text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$/gm, "");
  return [
    ...plain.matchAll(/(?<=["'`\s:(,])#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3,4})(?![\w-])/gi),
    ...plain.matchAll(/\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch)\([^)]*\)/g),
    ...plain.matchAll(
      new RegExp(`(?:color|background|fill|stroke|border[\\w-]*)[:=]\\s*["'{]*(?:${named})\\b`, "gi"),
    ),
  ].map(([found]) => found);
}

const files = screenFiles(".css", ".tsx", ".ts");
const theme = files.find(({ file }) => file === "app/theme.css")!.text;

test("colours stand in the theme and nowhere else", () => {
  const found = files
    .filter(
      ({ file }) => file !== "app/theme.css" && !byHand.includes(file) && !file.startsWith(onPhotographs),
    )
    .flatMap(({ file, text }) => colourLiterals(text).map((colour) => `${file}: ${colour}`));
  expect(files.length).toBeGreaterThan(300);
  expect(found).toEqual([]);
});

test("a colour written out would be noticed, in any way of writing it", () => {
  for (const line of [
    ".a { color: #fff; }",
    ".a { background: rgb(0 0 0 / 25%); }",
    'fill="#1f5aa6"',
    'stroke: "white"',
    ".a { border: 1px solid #abcd; }",
    ".a { color: white; }",
  ])
    expect(colourLiterals(line), line).toHaveLength(1);
  expect(colourLiterals('  // #fff\nhref="/beads/new#face"')).toEqual([]);
});

test("what cannot ask the theme says colours of the theme", () => {
  const { light, dark } = themeColours(theme);
  const ours = new Set([...Object.values(light), ...Object.values(dark)]);
  const long = (hex: string): string => (hex.length === 4 ? hex.replace(/[0-9a-f]/g, "$&$&") : hex);
  const strangers = byHand.flatMap((name) =>
    colourLiterals(files.find(({ file }) => file === name)!.text)
      .filter((hex) => !ours.has(long(hex)))
      .map((hex) => `${name}: ${hex}`),
  );
  expect(strangers).toEqual([]);
});

test("every colour that is asked for is there", () => {
  const there = new Set([...theme.matchAll(/--([\w-]+):/g)].map(([, name]) => name));
  const own = new Set(
    files.flatMap(({ text }) =>
      [...text.matchAll(/--([\w-]+)["']?(?=:| as string)/g)].map(([, name]) => name),
    ),
  );
  const asked = files.flatMap(({ file, text }) =>
    [...text.matchAll(/var\(--([\w-]+)\)/g)].map(([, name = ""]) => ({ file, name })),
  );
  expect(asked.length).toBeGreaterThan(500);
  expect(
    asked.filter(({ name }) => !there.has(name) && !own.has(name) && !name.startsWith("radix-")),
  ).toEqual([]);
});
