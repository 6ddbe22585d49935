import { expect, it } from "vitest";
import { chanceWords } from "@/lib/report";

it("gives a chance a word and a rounded share, and never says certain or impossible", () => {
  expect(chanceWords(0.9999)).toBe("very likely, over 99 %");
  expect(chanceWords(0.994)).toBe("very likely, 99 %");
  expect(chanceWords(0.5)).toBe("likely, 50 %");
  expect(chanceWords(0.2)).toBe("possible, 20 %");
  expect(chanceWords(0.004)).toBe("unlikely, under 1 %");
});
