import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  DrawingSchema,
  emptyDrawing,
  newMark,
  reduce,
  startHistory,
  type Drawing,
  type History,
} from "@/lib/marks";
import { MOST_MARKS } from "@/lib/marks/drawing";
import { HISTORY_LIMIT } from "@/lib/marks/history";
import { type Action } from "@/lib/marks/action";
import { arbAction, arbDrawing, arbDrawingAction } from "../../arbitraries";

function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}

const run = (start: Drawing, actions: readonly Action[]): History =>
  actions.reduce(reduce, startHistory(start));

const arbHistory = fc
  .tuple(arbDrawing, fc.array(arbAction, { maxLength: 12 }))
  .map(([drawing, actions]) => run(drawing, actions));

describe("laws", () => {
  test("do then undo is the identity on the drawing", () => {
    let changes = 0;
    fc.assert(
      fc.property(arbHistory, arbDrawingAction, (history, action) => {
        const after = reduce(history, action);
        if (after === history) return;
        changes++;
        expect(reduce(after, { type: "undo" }).present).toBe(history.present);
      }),
      { numRuns: 300 },
    );
    expect(changes).toBeGreaterThan(50); // the law was not met by doing nothing
  });

  test("several at once leave what one after another would, in one step back", () => {
    const ids = fc.array(fc.constantFrom("m1", "m2", "m3", "m4", "nobody"), { maxLength: 5 });
    let changes = 0;
    fc.assert(
      fc.property(arbDrawing, ids, fc.boolean(), (drawing, some, isRemoval) => {
        const marks = drawing.marks.map((mark, i) => ({ ...mark, id: `m${i + 1}` }));
        const start = startHistory({ ...drawing, marks });
        const imperfection = "undercut" as const;
        const together = reduce(
          start,
          isRemoval
            ? { type: "marks.remove", ids: some }
            : { type: "marks.setImperfection", ids: some, imperfection },
        );
        const oneByOne = some.reduce(
          (history, id) =>
            reduce(
              history,
              isRemoval ? { type: "mark.remove", id } : { type: "mark.setImperfection", id, imperfection },
            ),
          start,
        );
        expect(together.present).toEqual(oneByOne.present);
        expect(together.past.length).toBe(together === start ? 0 : 1);
        if (together !== start) changes++;
      }),
      { seed: 31, numRuns: 300 },
    );
    expect(changes).toBeGreaterThan(50);
  });

  test("undo then redo is the identity on the whole history", () => {
    fc.assert(
      fc.property(arbHistory, (history) => {
        fc.pre(history.past.length > 0);
        expect(reduce(reduce(history, { type: "undo" }), { type: "redo" })).toEqual(history);
      }),
    );
  });

  test("undo and redo at the ends of history give the very same object", () => {
    fc.assert(
      fc.property(arbDrawing, (drawing) => {
        const fresh = startHistory(drawing);
        expect(reduce(fresh, { type: "undo" })).toBe(fresh);
        expect(reduce(fresh, { type: "redo" })).toBe(fresh);
      }),
    );
  });

  test("a new action empties the future", () => {
    fc.assert(
      fc.property(arbHistory, arbDrawingAction, (history, action) => {
        const undone = reduce(history, { type: "undo" });
        const after = reduce(undone, action);
        if (after !== undone) expect(after.future).toEqual([]);
      }),
    );
  });

  test("an action that changes nothing gives the very same object", () => {
    fc.assert(
      fc.property(arbHistory, arbDrawingAction, (history, action) => {
        const once = reduce(history, action);
        const said = reduce(once, structuredClone(action));
        // Setting, adding and removing twice is the same as once; moving and inserting is not.
        if (!/moveBy|insertPoint|removePoint/.test(action.type)) expect(said).toBe(once);
      }),
    );
  });

  test("whatever is done, the drawing stays one that can be stored, with no id twice", () => {
    fc.assert(
      fc.property(arbDrawing, fc.array(arbAction, { maxLength: 20 }), (drawing, actions) => {
        const { present } = run(drawing, actions);
        expect(DrawingSchema.safeParse(present).error).toBeUndefined();
        expect(new Set(present.marks.map((mark) => mark.id)).size).toBe(present.marks.length);
      }),
    );
  });

  test("frozen input is not harmed", () => {
    fc.assert(
      fc.property(arbDrawing, fc.array(arbAction, { maxLength: 12 }), (drawing, actions) => {
        const before = structuredClone(drawing);
        actions.reduce(
          (history, action) => deepFreeze(reduce(history, deepFreeze(action))),
          deepFreeze(startHistory(drawing)),
        );
        expect(drawing).toEqual(before);
      }),
    );
  });

  test("marks that an action does not touch are shared, not copied", () => {
    fc.assert(
      fc.property(arbDrawing, arbDrawingAction, (drawing, action) => {
        const touched = "id" in action ? [action.id] : "ids" in action ? action.ids : [];
        const after = reduce(startHistory(drawing), action).present;
        for (const mark of drawing.marks) {
          if (!touched.includes(mark.id)) expect(after.marks.find((m) => m.id === mark.id)).toBe(mark);
        }
      }),
    );
  });
});

describe("the bounds of a shape", () => {
  const line = newMark("toe", "undercut", {
    kind: "line",
    points: [
      { x: 10, y: 20 },
      { x: 210, y: 33 },
    ],
  });
  const slag = newMark("pocket", "stuck-slag", {
    kind: "outline",
    points: [
      { x: 5, y: 6 },
      { x: 45, y: 9 },
      { x: 30, y: 51 },
    ],
  });
  const pore = newMark("pore", "surface-porosity", { kind: "point", at: { x: 7, y: 9 }, radius: 4 });
  const start = startHistory({ ...emptyDrawing, marks: [line, slag, pore] });

  test.each([
    ["a line keeps two points", { type: "mark.removePoint", id: "toe", index: 0 }],
    ["an outline keeps three points", { type: "mark.removePoint", id: "pocket", index: 2 }],
    ["a spot keeps its one point", { type: "mark.removePoint", id: "pore", index: 0 }],
    ["a spot takes no second point", { type: "mark.insertPoint", id: "pore", index: 1, at: { x: 1, y: 2 } }],
    ["no point at a gap", { type: "mark.insertPoint", id: "toe", index: 3, at: { x: 1, y: 2 } }],
    ["an index outside moves nothing", { type: "mark.movePoint", id: "toe", index: 2, to: { x: 1, y: 2 } }],
    ["a point moved nowhere", { type: "mark.movePoint", id: "toe", index: 0, to: { x: 10, y: 20 } }],
    ["a shift by nothing", { type: "mark.moveBy", id: "toe", by: { x: 0, y: 0 } }],
    ["a point without a number", { type: "mark.movePoint", id: "toe", index: 0, to: { x: NaN, y: 2 } }],
    ["a shift beyond every photo", { type: "mark.moveBy", id: "toe", by: { x: 1e6, y: 0 } }],
    ["an unknown mark", { type: "mark.remove", id: "no such" }],
    ["an id that is taken", { type: "mark.add", mark: { ...pore, id: "toe" } }],
    ["a line of one point", { type: "weldLine.set", points: [{ x: 3, y: 4 }] }],
    ["nothing to clear", { type: "scale.clear" }],
  ] satisfies [string, Action][])("%s: the very same history", (_, action) => {
    expect(reduce(start, action)).toBe(start);
  });

  test("a point put in gets the index asked for, and can be taken out again", () => {
    const bent = reduce(start, { type: "mark.insertPoint", id: "toe", index: 1, at: { x: 100, y: 40 } });
    expect(bent.present.marks[0]?.shape).toEqual({
      kind: "line",
      points: [
        { x: 10, y: 20 },
        { x: 100, y: 40 },
        { x: 210, y: 33 },
      ],
    });
    const straight = reduce(bent, { type: "mark.removePoint", id: "toe", index: 1 });
    expect(straight.present).toEqual(start.present);
  });

  test("a pore moved keeps its radius", () => {
    const moved = reduce(start, { type: "mark.movePoint", id: "pore", index: 0, to: { x: 70, y: 90 } });
    expect(moved.present.marks[2]?.shape).toEqual({ kind: "point", at: { x: 70, y: 90 }, radius: 4 });
  });

  test("no more marks than a drawing may hold", () => {
    const marks = Array.from({ length: MOST_MARKS }, (_, i) => ({ ...pore, id: `p${i}` }));
    const full = startHistory({ ...emptyDrawing, marks });
    expect(reduce(full, { type: "mark.add", mark: pore })).toBe(full);
    const room = reduce(full, { type: "mark.remove", id: "p17" });
    expect(reduce(room, { type: "mark.add", mark: pore }).present.marks).toHaveLength(MOST_MARKS);
  });

  test("the history forgets its oldest step at the limit", () => {
    const moves = Array.from({ length: HISTORY_LIMIT + 3 }, (): Action => ({
      type: "mark.moveBy",
      id: "pore",
      by: { x: 2, y: 0 },
    }));
    const end = run(start.present, moves);
    expect(end.past).toHaveLength(HISTORY_LIMIT);
    expect(end.past[0]?.marks[2]?.shape).toMatchObject({ at: { x: 7 + 3 * 2 } });
  });

  test("loading another drawing leaves nothing to undo", () => {
    const edited = reduce(start, { type: "mark.remove", id: "pore" });
    expect(reduce(edited, { type: "load", drawing: emptyDrawing })).toEqual(startHistory(emptyDrawing));
    expect(reduce(start, { type: "load", drawing: structuredClone(start.present) })).toBe(start);
  });
});
