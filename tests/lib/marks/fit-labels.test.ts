import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { emptyDrawing, fitLabels, newMark, scene, type Mark } from "@/lib/marks";
import { isInside, overlaps, tagBox } from "@/lib/marks/tag-box";

const pore = (id: string, x: number, y: number): Mark =>
  newMark(id, "surface-porosity", { kind: "point", at: { x, y }, radius: 5 });
const sceneOf = (marks: Mark[], words = (m: Mark) => `Surface porosity ${m.id}`) =>
  scene({ ...emptyDrawing, marks }, { labels: words, widthPx: 1000 });
const tagsOf = (shapes: ReturnType<typeof sceneOf>) =>
  shapes.filter((shape) => shape.kind === "badge" || shape.kind === "label");

describe("words and numbers in each other's way", () => {
  const crowded = sceneOf(Array.from({ length: 9 }, (_, i) => pore(`p${i}`, 100 + 34 * i, 200)));
  const words = (unitPx: number, favoured: string | null = null) =>
    fitLabels(crowded, unitPx, favoured)
      .filter((shape) => shape.kind === "label")
      .map((label) => label.markId);

  test("words without a free place go; numbers stay", () => {
    expect(words(1).length).toBeLessThan(9);
    expect(fitLabels(crowded, 1).filter((shape) => shape.kind === "badge")).toHaveLength(9);
  });

  test("what stays lies apart", () => {
    const boxes = tagsOf(fitLabels(crowded, 1)).map((tag) => tagBox(tag, 1));
    boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => expect(overlaps(a, b)).toBe(false)));
  });

  test("zooming in brings all words back, where they were meant to stand", () => {
    expect(fitLabels(crowded, 0.1)).toEqual(crowded);
  });

  test("the favoured mark keeps its words whatever is in the way", () => {
    expect(words(1)).not.toContain("p4");
    expect(words(1, "p4")).toContain("p4");
  });

  test("two numbers at one place: the second hangs elsewhere", () => {
    const twins = sceneOf([pore("a", 500, 300), pore("b", 503, 302)], () => "");
    const [a, b] = tagsOf(fitLabels(twins, 1)).map((tag) => tagBox(tag, 1));
    expect(overlaps(a!, b!)).toBe(false);
  });
});

describe("inside the photo", () => {
  const photo = { widthPx: 1000, heightPx: 700 };
  const room = { left: 0, top: 0, right: 1000, bottom: 700 };

  test("twelve marks along its edges: every number and word is inside, and none lies on another", () => {
    const edge = [
      [3, 3], [250, 4], [500, 2], [750, 5], [997, 3], [996, 230],
      [998, 460], [995, 697], [700, 696], [350, 698], [4, 695], [2, 350],
    ].map(([x, y], i) => pore(`m${i}`, x!, y!)); // prettier-ignore
    const tags = tagsOf(fitLabels(sceneOf(edge), 1, null, photo));
    expect(tags).toHaveLength(24);
    const boxes = tags.map((tag) => tagBox(tag, 1));
    for (const box of boxes) expect(isInside(box, room)).toBe(true);
    boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => expect(overlaps(a, b)).toBe(false)));
  });

  test("no number or word lies on a pore", () => {
    const marks = [pore("corner", 997, 4), pore("edge", 400, 6), pore("near", 430, 30)];
    const tags = tagsOf(fitLabels(sceneOf(marks), 1, null, photo)).map((tag) => tagBox(tag, 1));
    for (const { shape } of marks) {
      const { x, y } = shape.kind === "point" ? shape.at : { x: NaN, y: NaN };
      const box = { left: x - 5, top: y - 5, right: x + 5, bottom: y + 5 };
      expect(tags.some((tag) => overlaps(tag, box))).toBe(false);
    }
  });

  test("a number that does not fit over its pore hangs under it, not on it", () => {
    const [badge] = tagsOf(
      fitLabels(
        sceneOf([pore("top", 400, 6)], () => ""),
        1,
        null,
        photo,
      ),
    );
    expect(tagBox(badge!, 1).top).toBeGreaterThan(6 + 5);
  });

  test("wherever marks lie, all numbers stay and nothing sticks out", () => {
    const spot = fc.record({ x: fc.integer({ min: 0, max: 1000 }), y: fc.integer({ min: 0, max: 700 }) });
    fc.assert(
      fc.property(fc.array(spot, { minLength: 1, maxLength: 25 }), (spots) => {
        const marks = spots.map(({ x, y }, i) => pore(`m${i}`, x, y));
        const tags = tagsOf(fitLabels(sceneOf(marks), 1, null, photo));
        expect(tags.filter((tag) => tag.kind === "badge")).toHaveLength(marks.length);
        for (const tag of tags) expect(isInside(tagBox(tag, 1), room)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});
