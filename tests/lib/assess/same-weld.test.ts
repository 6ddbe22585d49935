import { describe, expect, it } from "vitest";
import { judge, listCriteria } from "@/lib/accept";
import { emptyBeadContent, type BeadContent } from "@/lib/assess";
import { judgeInput } from "@/lib/assess/judge-input";
import type { Mark } from "@/lib/marks";
import { emptyDrawing } from "@/lib/marks";
import { calibrate, defaultMeasureOptions, measureDrawing } from "@/lib/measure";
import { emptyRunSetup } from "@/lib/setup";
import { imperfectionIds } from "@/lib/trade";
import { dice, shuffled, type Dice } from "../accept/random-weld";

/** Laws of our own; no published source. */
const sets = listCriteria();

function randomMark(roll: Dice, id: string, imperfections: readonly Mark["imperfection"][]): Mark {
  const reading = (quantity: "depth" | "height" | "diameter" | "length") =>
    roll.maybe(0.6)
      ? [
          {
            quantity,
            valueMm: Number(roll.between(0.1, 4).toFixed(1)),
            instrument: "Gauge",
            resolutionMm: 0.1,
          },
        ]
      : [];
  return {
    id,
    imperfection: roll.oneOf(imperfections),
    shape: { kind: "point", at: { x: roll.between(0, 900), y: roll.between(0, 900) }, radius: null },
    place: roll.maybe(0.5) ? roll.oneOf(["upper-toe", "lower-toe", "face"] as const) : null,
    stretch: null,
    patterns: [],
    gauge: [...reading("depth"), ...reading("height"), ...reading("diameter"), ...reading("length")],
    note: "",
  };
}

function onPhotos(photos: readonly (readonly Mark[])[], rest: Partial<BeadContent>): BeadContent {
  return {
    ...emptyBeadContent,
    ...rest,
    photos: photos.map((marks, i) => ({
      id: `p${i}`,
      role: "face",
      drawing: { ...emptyDrawing, marks: [...marks] },
    })),
  };
}

/** Without a scale: the gauges say everything, and nothing depends on where on a photo a mark lies. */
const measured = (content: BeadContent) =>
  content.photos.map(({ id, drawing }) => ({
    photoId: id,
    marks: measureDrawing(drawing, calibrate(drawing.scale, defaultMeasureOptions)),
    weldLengthMm: null,
  }));

const said = (content: BeadContent): string => {
  const input = judgeInput(content, measured(content));
  if (input === null) throw new Error("no criteria");
  const result = judge(input);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  const { verdict, rows } = result.value;
  return [
    verdict,
    ...rows.map(({ ruleId, result: row, value }) => `${ruleId} ${row} ${value?.toFixed(9)}`).sort(),
  ].join("\n");
};

describe("the same weld", () => {
  it("has the same verdict and the same rows, however its marks lie over the photos and in whatever order", () => {
    const happened = new Set<string>();
    for (let seed = 1; seed <= 600; seed++) {
      const roll = dice(seed);
      const set = roll.oneOf(sets);
      const imperfections = set.imperfections.length > 0 ? set.imperfections : imperfectionIds;
      const marks = Array.from({ length: 1 + Math.floor(roll.between(0, 4)) }, (_, i) =>
        randomMark(roll, `m${i}`, imperfections),
      );
      const present = new Set(marks.map(({ imperfection }) => imperfection));
      const rest = {
        setup: {
          ...emptyRunSetup,
          joint: roll.oneOf(["tee", "groove-open"] as const),
          thicknessMm: Number(roll.between(2, 30).toFixed(1)),
          targetLegMm: 6,
          weldLengthMm: 300,
        },
        judgement: {
          ...emptyBeadContent.judgement,
          criteriaId: set.id,
          lookedFor: imperfectionIds.filter((id) => !present.has(id)),
        },
      };
      const alone = said(onPhotos([marks], rest));
      happened.add(alone.split("\n")[0]!);
      const cut = Math.floor(roll.between(0, marks.length + 1));
      expect(said(onPhotos([marks.slice(0, cut), marks.slice(cut)], rest))).toBe(alone);
      expect(
        said(
          onPhotos(
            marks.map((mark) => [mark]),
            rest,
          ),
        ),
      ).toBe(alone);
      expect(said(onPhotos([shuffled(roll, marks)], rest))).toBe(alone);
    }
    expect(happened.size).toBeGreaterThan(1);
  });
});
