import { expect, it } from "vitest";
import { remembered } from "@/lib/base";

it("works out once for the same things, and anew when any of them is another", () => {
  let made = 0;
  const sum = remembered(({ a }: { a: number }, b: number, c: object | null) => {
    made += 1;
    return a + b + (c === null ? 0 : 1);
  });
  const [one, two] = [{ a: 1 }, { a: 2 }];
  expect([sum(one, 2, null), sum(one, 2, null), sum(two, 2, null), sum(one, 2, null)]).toEqual([3, 3, 4, 3]);
  expect(made).toBe(2);
  expect([sum(one, 3, null), sum(one, 3, {}), sum(one, 3, {})]).toEqual([4, 5, 5]);
  expect(made).toBe(5);
});
