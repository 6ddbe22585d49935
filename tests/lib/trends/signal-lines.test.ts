import { expect, test } from "vitest";
import { signalLines } from "@/lib/trends";

const point = (label: string) => ({ label }) as Parameters<typeof signalLines>[0]["points"][number];
const points = ["2026-W44", "2026-W45", "2026-W46"].map(point);

test("a signal says when, which rule and on which side", () => {
  expect(signalLines({ points, signals: [{ rule: "beyond-limit", side: "above", from: 1, to: 1 }] })).toEqual(
    ["2026-W45: beyond its control limit, more rejects than the rest. Look for what changed."],
  );
  expect(
    signalLines({
      points,
      signals: [{ rule: "two-of-three-beyond-two-sigma", side: "below", from: 0, to: 2 }],
    }),
  ).toEqual([
    "2026-W44 to 2026-W46: two of three beyond two sigma, fewer rejects than the rest. Look for what changed.",
  ]);
});
