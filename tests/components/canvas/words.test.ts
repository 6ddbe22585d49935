import { describe, expect, test } from "vitest";
import { patternChoices, placeChoices } from "@/components/canvas/mark-words";
import { plainGauges } from "@/components/canvas/gauges";
import { tools } from "@/components/canvas/types";
import { hintFor, toolWords } from "@/components/canvas/words";
import { emptyDrawing, groupStyles } from "@/lib/marks";
import { GaugeReadingSchema } from "@/lib/marks/drawing";
import { patterns } from "@/lib/trade";

const ids = (choices: readonly { id: string }[]) => choices.map((choice) => choice.id);

describe("places fit the joint", () => {
  test("a horizontal T has an upper and a lower toe", () => {
    expect(ids(placeChoices("tee", "horizontal"))).toEqual(
      expect.arrayContaining(["upper-toe", "lower-toe", "root"]),
    );
    expect(ids(placeChoices("tee", "horizontal"))).not.toContain("left-toe");
  });

  test("a stringer laid flat has a left and a right toe and no root", () => {
    expect(ids(placeChoices("bead-on-plate", "flat"))).toEqual([
      "left-toe",
      "right-toe",
      "both-toes",
      "face",
      "beside",
    ]);
  });

  test("when the position is not known, all four toes are offered", () => {
    expect(ids(placeChoices(null, null))).toEqual(
      expect.arrayContaining(["upper-toe", "lower-toe", "left-toe", "right-toe"]),
    );
  });

  test("what was said before is never lost", () => {
    expect(ids(placeChoices("tee", "horizontal", "left-toe"))).toContain("left-toe");
    expect(patternChoices("crack", ["with-soot"])).toContain("with-soot");
  });
});

test("every pattern can be ticked somewhere", () => {
  const offered = new Set(
    (Object.keys(groupStyles) as (keyof typeof groupStyles)[]).flatMap((group) => patternChoices(group, [])),
  );
  expect([...offered].sort()).toEqual([...patterns].sort());
});

test("a weld line that is set is not asked for again", () => {
  const line = [
    { x: 0, y: 0 },
    { x: 9, y: 0 },
  ];
  expect(hintFor("weld-line", null, emptyDrawing)).toBe("Tap where the weld starts.");
  expect(hintFor("weld-line", null, { ...emptyDrawing, weldLine: line })).toMatch(/^The weld line is set\./);
  const drawn = { kind: "path", tool: "weld-line", points: [line[0]!], next: null } as const;
  expect(hintFor("weld-line", drawn, { ...emptyDrawing, weldLine: line })).toMatch(/^Follow the weld/);
});

test("each tool has a key of its own", () => {
  expect(new Set(tools.map((tool) => toolWords[tool].key)).size).toBe(tools.length);
});

test("every instrument can be stored with a reading", () => {
  for (const { name, resolution } of plainGauges) {
    const reading = { quantity: "depth", valueMm: 0.4, instrument: name, resolutionMm: resolution };
    expect(GaugeReadingSchema.safeParse(reading).data).toEqual(reading);
  }
});
