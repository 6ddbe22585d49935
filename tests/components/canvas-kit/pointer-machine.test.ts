import { describe, expect, test } from "vitest";
import type { Grip, HeldThing } from "@/components/canvas-kit/grip";
import {
  noPointers,
  stepPointers,
  wantsLoupe,
  type PointerInput,
  type Pointers,
  type PointerStep,
} from "@/components/canvas-kit/pointer-machine";

type Kind = "touch" | "mouse";
const stretch: Grip<HeldThing> = { kind: "stretch" };

/** A hand on the glass, one photo pixel per CSS pixel. */
const press = (
  id: number,
  x: number,
  y: number,
  grip: Grip<HeldThing> = stretch,
  kind: Kind = "touch",
  time = 0,
) => ({ type: "press", id, at: { x, y }, photo: { x, y }, time, kind, grip }) as const;
const join = (id: number, x: number, y: number) => ({ type: "join", id, at: { x, y } }) as const;
const move = (id: number, x: number, y: number, time = 50, kind: Kind = "touch") =>
  ({ type: "move", id, at: { x, y }, photo: { x, y }, time, kind }) as const;
const lift = (id: number, time = 100) => ({ type: "lift", id, time }) as const;

/** Everything the inputs meant, in order. */
function run(...inputs: readonly PointerInput<HeldThing>[]) {
  const effects: PointerStep<HeldThing>["effects"][number][] = [];
  let pointers: Pointers<HeldThing> = noPointers;
  for (const input of inputs) {
    const step = stepPointers(pointers, input);
    pointers = step.pointers;
    effects.push(...step.effects);
  }
  return { pointers, effects, types: effects.map(({ type }) => type) };
}

describe("one finger", () => {
  test("trembling within the slop it taps where it came down", () => {
    const { effects } = run(press(1, 100, 100), move(1, 106, 104), lift(1));
    expect(effects).toMatchObject([
      { type: "awaitHold" },
      { type: "tap", double: false, press: { from: { x: 100, y: 100 } } },
    ]);
  });

  test("beyond the slop it drags and is released, with its way", () => {
    const { types, effects } = run(press(1, 0, 0), move(1, 20, 0), move(1, 40, 5), lift(1));
    expect(types).toEqual(["awaitHold", "drag", "drag", "release"]);
    expect(effects.at(-1)).toMatchObject({
      press: {
        trail: [
          { x: 0, y: 0 },
          { x: 20, y: 0 },
          { x: 40, y: 5 },
        ],
        last: { x: 40, y: 5 },
      },
    });
  });

  test("a mouse is finer than a finger: 5 px are a tap of one and a drag of the other", () => {
    expect(run(press(1, 0, 0), move(1, 5, 0), lift(1)).types).toContain("tap");
    expect(run(press(1, 0, 0, stretch, "mouse"), move(1, 5, 0, 50, "mouse"), lift(1)).types).toEqual([
      "drag",
      "release",
    ]);
  });

  test("with the photo in its grip it pans by what it moved", () => {
    const { effects } = run(press(1, 0, 0, { kind: "pan" }), move(1, 12, 0), move(1, 15, 4));
    expect(effects).toEqual([
      { type: "pan", by: { x: 12, y: 0 } },
      { type: "pan", by: { x: 3, y: 4 } },
    ]);
  });

  test("two taps soon and near are a double tap, and the third begins anew", () => {
    const tap = (time: number) => [press(1, 50, 50, stretch, "touch", time), lift(1, time + 40)];
    const { effects } = run(...tap(0), ...tap(150), ...tap(300));
    expect(effects.flatMap((e) => (e.type === "tap" ? [e.double] : []))).toEqual([false, true, false]);
  });
});

describe("a long press", () => {
  test("turns stretching into placing, and the point follows the finger", () => {
    const { types, pointers } = run(press(1, 0, 0), { type: "hold" }, move(1, 2, 1, 450));
    expect(types).toEqual(["awaitHold", "drag", "drag"]);
    expect(pointers.press?.grip).toEqual({ kind: "place" });
  });

  test("does nothing to a finger that has begun to drag", () => {
    expect(run(press(1, 0, 0), move(1, 5, 0), { type: "hold" }).types).toEqual(["awaitHold"]);
  });

  test("is taken back when the finger had left before its time, told late by a busy phone", () => {
    const { pointers } = run(press(1, 0, 0), { type: "hold" }, move(1, 30, 0, 200));
    expect(pointers.press?.grip).toEqual(stretch);
  });
});

describe("two fingers while drawing", () => {
  test("take back what the first had begun and place nothing, whichever leaves first", () => {
    for (const [a, b] of [
      [1, 2],
      [2, 1],
    ] as const) {
      const { types, pointers } = run(
        press(1, 100, 100, { kind: "place" }),
        join(2, 200, 100),
        move(2, 260, 100),
        move(1, 80, 100),
        lift(a),
        move(b, 300, 300),
        lift(b),
      );
      expect(types).toEqual(["drag", "giveUp", "pan", "zoom", "pan", "zoom"]);
      expect(pointers.down.size).toBe(0);
      expect(pointers.press).toBeNull();
    }
  });

  test("zoom by how far apart they move, about their middle", () => {
    const { effects } = run(press(1, 100, 100), join(2, 200, 100), move(2, 300, 100));
    expect(effects.slice(-2)).toEqual([
      { type: "pan", by: { x: 50, y: 0 } },
      { type: "zoom", factor: 2, at: { x: 200, y: 100 } },
    ]);
  });

  test("moved side by side they pan and do not zoom in the end", () => {
    const { effects } = run(press(1, 0, 0), join(2, 100, 0), move(1, 0, 40), move(2, 100, 40));
    const factor = effects.reduce((k, e) => (e.type === "zoom" ? k * e.factor : k), 1);
    const down = effects.reduce((y, e) => (e.type === "pan" ? y + e.by.y : y), 0);
    expect(factor).toBeCloseTo(1, 12);
    expect(down).toBe(40);
  });

  test("a third finger changes nothing", () => {
    expect(run(press(1, 0, 0), join(2, 100, 0), join(3, 50, 50), move(3, 90, 90)).types).toEqual([
      "awaitHold",
      "giveUp",
    ]);
  });
});

test("a pointer the system takes away leaves nothing behind", () => {
  const { types, pointers } = run(press(1, 0, 0), move(1, 30, 0), { type: "cancel", id: 1 });
  expect(types).toEqual(["awaitHold", "drag", "giveUp"]);
  expect(pointers.press).toBeNull();
});

test("a mouse without a button hovers, a finger not on the glass does nothing", () => {
  expect(run(move(1, 5, 6, 0, "mouse")).effects).toEqual([{ type: "hover", at: { x: 5, y: 6 } }]);
  expect(run(move(1, 5, 6)).effects).toEqual([]);
});

test("the magnifier is for a finger that sets a point", () => {
  expect(wantsLoupe(run(press(1, 0, 0)).pointers.press)).toBe(true);
  expect(wantsLoupe(run(press(1, 0, 0, { kind: "pan" })).pointers.press)).toBe(false);
  expect(wantsLoupe(run(press(1, 0, 0, stretch, "mouse")).pointers.press)).toBe(false);
});
