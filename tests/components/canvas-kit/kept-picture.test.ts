import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  keepPicture,
  layKept,
  placeOfKept,
  type Kept,
  type KeptPicture,
} from "@/components/canvas-kit/kept-picture";
import { toScreen } from "@/components/canvas-kit/view";

const views = fc.record({
  zoom: fc.double({ min: 0.05, max: 4, noNaN: true }),
  pan: fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) }),
});
const asked: Kept = {
  list: [],
  view: { zoom: 0.5, pan: { x: 12, y: -7 } },
  box: { width: 400, height: 300 },
  room: 105,
  ratio: 2,
};

describe("a kept picture", () => {
  it("law: lies so that each point of the photo is where the photo has it now", () => {
    const places = fc.integer({ min: 0, max: 6000 });
    fc.assert(
      fc.property(views, views, places, places, fc.constantFrom(1, 1.5, 2), (view, now, x, y, ratio) => {
        const { k, ...corner } = placeOfKept({ ...asked, view, ratio }, now);
        // Where it was painted on the picture: its own pan, and the room beyond the box.
        const on = toScreen(view, { x, y });
        const [px, py] = [(on.x + asked.room) * ratio, (on.y + asked.room) * ratio];
        const is = toScreen(now, { x, y });
        expect(corner.x + px * k).toBeCloseTo(is.x * ratio, 5);
        expect(corner.y + py * k).toBeCloseTo(is.y * ratio, 5);
      }),
      { seed: 26, numRuns: 200 },
    );
  });

  it("at rest lies pixel on pixel, so that nothing of it is blurred", () => {
    const { k, x, y } = placeOfKept(asked, asked.view);
    expect([k, x, y]).toEqual([1, -210, -210]);
  });

  it("is painted anew for another list, view, box, room or grain, and only then", () => {
    const before = { ...asked, canvas: {} } as KeptPicture;
    expect(keepPicture(before, { ...asked, view: { ...asked.view }, box: { ...asked.box } })).toBe(before);
    const others: readonly Partial<Kept>[] = [
      { list: [] },
      { view: { ...asked.view, zoom: 0.6 } },
      { view: { ...asked.view, pan: { x: 13, y: -7 } } },
      { view: { ...asked.view, pan: { x: 12, y: -6 } } },
      { box: { width: 401, height: 300 } },
      { box: { width: 400, height: 301 } },
      { room: 0 },
      { ratio: 1 },
    ];
    for (const other of others) {
      const canvas = { width: 0, height: 0, getContext: () => null } as unknown as HTMLCanvasElement;
      const { box, room, ratio } = { ...asked, ...other };
      const next = keepPicture({ ...before, canvas }, { ...asked, ...other });
      expect([next.canvas.width, next.canvas.height]).toEqual([
        (box.width + 2 * room) * ratio,
        (box.height + 2 * room) * ratio,
      ]);
    }
  });

  it("leaves the pen as it was", () => {
    const did: string[] = [];
    const note =
      (name: string) =>
      (...given: unknown[]): void =>
        void did.push(`${name} ${given.filter((one) => typeof one === "number").join()}`.trim());
    const pen = {
      save: note("save"),
      restore: note("restore"),
      setTransform: note("setTransform"),
      drawImage: note("drawImage"),
    } as unknown as Parameters<typeof layKept>[0];
    layKept(pen, { ...asked, canvas: {} } as KeptPicture, asked.view);
    expect(did).toEqual(["save", "setTransform 1,0,0,1,-210,-210", "drawImage 0,0", "restore"]);
  });
});
