import { expect, it } from "vitest";
import { chanceWords, missingSentences } from "@/lib/report";

it("gives a chance a word and a rounded share, and never says certain or impossible", () => {
  expect(chanceWords(0.9999)).toBe("very likely, over 99 %");
  expect(chanceWords(0.994)).toBe("very likely, 99 %");
  expect(chanceWords(0.5)).toBe("likely, 50 %");
  expect(chanceWords(0.2)).toBe("possible, 20 %");
  expect(chanceWords(0.004)).toBe("unlikely, under 1 %");
});

it("asks for one reading of several marks in one sentence", () => {
  const depth = (observationId: string) =>
    ({ quantity: "depth", observationId, gauge: "undercut-gauge" }) as const;
  const throat = { quantity: "throat", observationId: null, gauge: "throat-gauge" } as const;
  expect(
    missingSentences([depth("1"), throat, depth("2"), depth("5"), depth("gone")], (id) => Number(id) || null),
  ).toEqual(["depth of marks 1–2, 5, with an undercut gauge", "throat, with a throat gauge"]);
  expect(missingSentences([depth("3")], Number)).toEqual(["depth of mark 3, with an undercut gauge"]);
});
