import { expect, test } from "vitest";
import { levelFor } from "@/components/canvas-kit/use-photo";

const levels = [{ width: 4000 }, { width: 2000 }, { width: 1000 }];

test("the smallest level with a pixel for every device pixel is drawn; the largest when none has", () => {
  expect([350, 1000, 1001, 3200, 9000].map((width) => levelFor(levels, width)?.width)).toEqual([
    1000, 1000, 2000, 4000, 4000,
  ]);
  expect(levelFor([], 300)).toBeNull();
});
