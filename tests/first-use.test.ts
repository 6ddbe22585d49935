/**
 * What stood in the way of people who used it for the first time, on a phone and at a desk, and the test that holds it mended. A
 * line without a test says why there is none.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { GET as iconOf } from "@/app/icons/[name]/route";
import manifest from "@/app/manifest";
import { palette } from "@/components/picture";
import { emptyDrawing, newMark, primitives, scene } from "@/lib/marks";

const root = fileURLToPath(new URL("..", import.meta.url));

/** What was found; then the file of its test with words of the test's name. */
const held: readonly (readonly [found: string, file: string, says: string])[] = [
  ["work lost while the server is away", "e2e/nothing-lost", "everything is there without a press"],
  ["a photo taken while away is lost", "e2e/nothing-lost", "are marked at once, sent by themselves"],
  ["a planned set-up written over", "e2e/answer", "its planned set-up until somebody says otherwise"],
  ["no undo of a set-up", "components/bead/setup-undo", "leads back to the beginning from anywhere"],
  ["a record before there is a photo", "e2e/nothing-lost", "leaves no record until its first value"],
  ["a bead cannot be deleted", "e2e/list", "deleted and brought back"],
  ["the demo cannot be cleared", "lib/demo/fill-and-clear", "leaves an empty shop"],
  ["the answer is not opened on", "e2e/answer", "opens on it, the whole of it in one screen"],
  ["a headline without its cause", "lib/report/answer-words", "says what the record shows first"],
  ["the next bead hides the change", "e2e/answer", "keeps its change on top"],
  ["the bench card drops how far", "lib/report/answer-words", "is said where nobody wrote down from where"],
  ["half the page is caveat", "lib/report/answer-words", "nor what it rests on"],
  ["too many reasons", "lib/report/answer-words", "at most three reasons for and two against"],
  ["words surer than the weights", "lib/diagnose/certainty", "keep what they promise on the published"],
  ["the picker covers the spot", "components/canvas/picker-place", "never covers the spot"],
  ["no way out for who is not sure", "e2e/atlas.deep", "shows whoever is not sure how to tell"],
  ["shop words not found", "lib/trade/find-imperfection", "finds every word of the table"],
  ["a blow hole finds burn-through", "lib/trade/find-imperfection", "a blow hole is no burn-through"],
  ["labels hide the weld", "components/canvas/tag-level", "hides words, then numbers too"],
  ["no choosing of several marks", "e2e/many-marks.deep", "are chosen together"],
  ["no entry for twenty of a kind", "e2e/compare.deep", "is one mark with a count"],
  ["lines drag straight only", "e2e/along-edge", "draws along the toe of a bead"],
  ["sideways scrolling, tools out of reach", "e2e/fits", "all that is to be pressed is within reach"],
  ["no preview of a HEIC", "e2e/along-edge", "sees what a HEIC file carries"],
  ["shortcuts swallow typed words", "components/canvas-kit/use-window-keys", "a key belongs to a field"],
  [
    "the list of keys is hidden",
    "components/canvas/key-rows",
    "every key that does something is in the list",
  ],
  ["long decimals on screen", "rounding", "only the rounding table decides"],
  ["millimetres in inch mode", "lib/report/inch-sheet", "speaks the units of its reader alone"],
  ["dials without a scale in volts", "lib/setup/dials", "where a knob stands is kept as it was read"],
  ["everybody's menu is the same", "app/menu", "are those that each may open"],
  ["nothing leads a first visitor", "e2e/guide.deep", "leads a first visitor from the list to an answer"],
  [
    "two beads cannot be laid side by side",
    "e2e/compare.deep",
    "are ticked in the list, zoomed and moved as one",
  ],
  ["does not open without network", "components/offline/worker", "is the list and workbenches"],
  ["a sheet cannot be shared", "components/ui/share-file", "opens the device's share sheet"],
  ["the light of a photo cannot be changed", "components/canvas-kit/eye-look", "asks for what was changed"],
  ["notes cannot be spoken", "components/ui/recogniser", "is offered where the browser can listen"],
  ["a photo of 100 x 68 pixels is taken without a word", "lib/report/small-photo", "says of a small photo"],
  ["no illustrated atlas", "e2e/atlas.deep", "the atlas"],
  ["a missing exercise is called a deleted bead", "e2e/fits", "is not said to be a deleted bead"],
  ["WPS WPS, 1 welds, machines' words in filters", "e2e/fits", "or in machines' words is found"],
  ["whether the rod stuck, process unknown", "lib/diagnose/checks", "what only one of them can show"],
  ["is there ropey", "lib/diagnose/checks", "name what they ask for as it is named everywhere"],
  ["pages of a sheet left half blank", "lib/pdf/sheet-pdf", "no page but the last half blank"],
];

/*
 * Without a test of its own, and why:
 * - demo beads that all carry the same faults: how believable a shop is, no assertion says; a person looks.
 * - the photo has half the height of a wide screen: a matter of layout that a picture shows (README).
 * - a sheet of one photo on two pages: how much stands on it decides. A page is filled before the next begins (sheet-pdf).
 * - a code on paper that leads to 127.0.0.1: it is the address that the reader asked under; theirs to choose.
 */

describe("what stood in the way", () => {
  it.each(held)("%s: a test holds it mended", (_, file, says) => {
    const at = ["ts", "tsx"].map((end) => path.join(root, `tests/${file}.test.${end}`));
    const text = at.map((one) => readOr(one)).join("");
    expect(text).not.toBe("");
    expect(text).toContain(says);
  });
});

function readOr(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return "";
  }
}

it("tags are numbers alone: a letter beside one is a test position to a welder", () => {
  const at = { x: 400, y: 300 };
  const marks = Array.from({ length: 24 }, (_, i) =>
    newMark(`m${i}`, "undercut", { kind: "point", at: { ...at, x: 40 * i }, radius: 9 }),
  );
  const shapes = scene({ ...emptyDrawing, marks }, { labels: () => "", widthPx: 1000 });
  const said = shapes
    .filter(({ kind }) => kind === "badge")
    .flatMap((shape) => primitives(shape, palette, 1))
    .flatMap((one) => (one.kind === "text" ? [one.text] : []));
  expect(said).toEqual(marks.map((_, i) => String(i + 1)));
});

it("can be installed: a name, a window of its own, and icons that are as large as they say", async () => {
  const { name, display, start_url, icons = [] } = manifest();
  expect([name, display, start_url]).toEqual(["Toeline", "standalone", "/"]);
  // Chromium asks for 192 and 512 pixels; a mask may cut a fifth off each side (W3C, Web Application Manifest, 1.14.2).
  expect(icons.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(["192x192", "512x512"]));
  expect(icons.some(({ purpose }) => purpose === "maskable")).toBe(true);
  for (const { src, sizes } of icons) {
    const params = Promise.resolve({ name: path.basename(src) });
    const answer = await iconOf(new Request("http://bench/"), { params });
    const { width, height } = await sharp(Buffer.from(await answer.arrayBuffer())).metadata();
    expect(`${width}x${height}`).toBe(sizes);
  }
});
