import { expect, it } from "vitest";
import { missingSentences } from "@/lib/report";

it("asks for one reading of several marks in one sentence", () => {
  const depth = (observationId: string) =>
    ({ quantity: "depth", observationId, gauge: "undercut-gauge" }) as const;
  const throat = { quantity: "throat", observationId: null, gauge: "throat-gauge" } as const;
  expect(
    missingSentences([depth("1"), throat, depth("2"), depth("5"), depth("gone")], (id) => Number(id) || null),
  ).toEqual(["depth of marks 1–2, 5, with an undercut gauge", "throat, with a throat gauge"]);
  expect(missingSentences([depth("3")], Number)).toEqual(["depth of mark 3, with an undercut gauge"]);
});
