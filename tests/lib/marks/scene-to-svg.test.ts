import { describe, expect, test } from "vitest";
import { emptyDrawing, newMark, scene, sceneToSvg, type ScenePalette, type SvgNode } from "@/lib/marks";

const ink = (line: string) => ({ line, casing: "white", onLine: "white" });
const palette: ScenePalette = {
  inks: {
    gas: ink("navy"),
    shape: ink("indigo"),
    fusion: ink("sienna"),
    crack: ink("firebrick"),
    slag: ink("black"),
    surface: ink("gold"),
    guide: ink("black"),
  },
  text: "black",
  halo: "white",
};

const drawing = {
  ...emptyDrawing,
  marks: [
    newMark("a", "undercut", {
      kind: "line",
      points: [
        { x: 100, y: 200 },
        { x: 300, y: 204 },
      ],
    }),
    newMark("b", "surface-porosity", { kind: "point", at: { x: 700, y: 300 }, radius: 12.3456 }),
  ],
};
const draw = (acrossUnits: number): SvgNode =>
  sceneToSvg(scene(drawing, { labels: () => "12 mm" }), 1200, 800, { palette, acrossUnits });

const children = (root: SvgNode): readonly SvgNode[] =>
  root.children.filter((child): child is SvgNode => typeof child !== "string");

describe("sceneToSvg", () => {
  test("the view box is the photo in pixels", () => {
    expect(draw(600).attributes.viewBox).toBe("0 0 1200 800");
  });

  test("a line is drawn twice: a white casing, then the ink with its dash, in photo pixels", () => {
    const [casing, line] = children(draw(600)); // two photo pixels to the unit
    expect(casing).toMatchObject({ tag: "path", attributes: { stroke: "white", "stroke-width": 13 } });
    expect(line).toMatchObject({
      tag: "path",
      attributes: { d: "M100 200L300 204", stroke: "indigo", "stroke-width": 5, "stroke-dasharray": "28 12" },
    });
    expect(casing?.attributes).not.toHaveProperty("stroke-dasharray");
  });

  test("fewer units across make lines and text larger, and leave positions and radii alone", () => {
    const [fine, coarse] = [children(draw(1200)), children(draw(300))];
    const pick = (nodes: readonly SvgNode[], tag: string, key: string) =>
      nodes.filter((node) => node.tag === tag).map((node) => node.attributes[key]);
    expect(pick(fine, "text", "font-size")).toEqual([15, 15, 15, 15]);
    expect(pick(coarse, "text", "font-size")).toEqual([60, 60, 60, 60]);
    expect(pick(fine, "circle", "r")).toEqual([12.35, 12.35]);
    expect(pick(coarse, "circle", "r")).toEqual([12.35, 12.35]);
  });

  test("number, letter and words are text", () => {
    const texts = children(draw(600)).filter((node) => node.tag === "text");
    expect(texts.map((node) => node.children[0])).toEqual(["1", "12 mm", "2", "12 mm"]);
  });
});
