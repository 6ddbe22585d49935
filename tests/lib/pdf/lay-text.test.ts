import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { openFaces } from "@/lib/pdf/faces";
import { balanceText, layText, piecesWidth, run, type TextBlock } from "@/lib/pdf/lay-text";

const faces = openFaces(new PDFDocument({ font: null as unknown as string }));
const words = (block: TextBlock): readonly string[] =>
  block.lines.map((line) => line.map(({ text }) => text).join(""));
const widest = (block: TextBlock): number => Math.max(...block.lines.map((line) => piecesWidth(faces, line)));

describe("layText", () => {
  const sentence = "Chip the slag, brush the toes and look again before the next run goes over it.";

  it("breaks at spaces, loses no word and stays in its column", () => {
    const block = layText(faces, [run(sentence, "text", 9)], 97);
    expect(block.lines.length).toBeGreaterThan(3);
    expect(words(block).join(" ")).toBe(sentence);
    expect(widest(block)).toBeLessThanOrEqual(97);
    expect(block.height).toBeCloseTo(block.lines.length * 9 * 1.28, 9);
  });

  it("cuts a word that is wider than its column between letters", () => {
    const block = layText(faces, [run("a Wormholewormholewormhole b", "strong", 10)], 53);
    expect(words(block).join("").replace(/ /g, "")).toBe("aWormholewormholewormholeb");
    expect(widest(block)).toBeLessThanOrEqual(53);
  });

  it("glues runs that no space parts, and changes face within a line", () => {
    const block = layText(faces, [run("Undercut", "strong", 9), run(": read 0.7 mm", "text", 9)], 300);
    expect(block.lines).toHaveLength(1);
    expect(block.lines[0]?.map(({ text, font }) => [text, font])).toEqual([
      ["Undercut", "strong latin"],
      [": read 0.7 mm", "text latin"],
    ]);
  });

  it("keeps line feeds only where they are asked for", () => {
    const note = [run("one\n\ntwo", "text", 9)];
    expect(words(layText(faces, note, 300))).toEqual(["one two"]);
    expect(words(layText(faces, note, 300, { breaks: true }))).toEqual(["one", "", "two"]);
  });
});

describe("balanceText", () => {
  it("needs as many lines as before, the last one longer", () => {
    const title = [run("Lap on 2 mm, lower toe rolled over", "heavy", 27)];
    const plain = layText(faces, title, 320);
    const balanced = balanceText(faces, title, 320, 1.12);
    expect(balanced.lines).toHaveLength(plain.lines.length);
    const last = (block: TextBlock) => piecesWidth(faces, block.lines.at(-1) ?? []);
    expect(last(balanced)).toBeGreaterThan(last(plain));
  });
});

describe("faces", () => {
  it("take a letter from the file that has it, and write signs that none has another way", () => {
    expect(faces.split("Łuk ⌀ 3", "text")).toEqual([
      { text: "Ł", font: "text latin-ext" },
      { text: "uk Ø 3", font: "text latin" },
    ]);
  });

  it("join a letter and its accent written apart", () => {
    expect(faces.split("u\u0308", "text")).toEqual([{ text: "ü", font: "text latin" }]);
  });
});
