import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beyond, carried, liveView, REST_MS, type Clock } from "@/components/canvas-kit/live-view";
import { fitView, toPhoto, toScreen, zoomAt, type View } from "@/components/canvas-kit/view";

/** Time goes by when it is told to. */
function handClock(): Clock & { pass: (ms: number) => void } {
  let [at, due, wake] = [0, Infinity, (): void => undefined];
  return {
    now: () => at,
    after: (ms, run) => {
      [due, wake] = [at + ms, run];
      return () => {
        due = Infinity;
      };
    },
    pass: (ms) => {
      at += ms;
      if (at < due) return;
      due = Infinity;
      wake();
    },
  };
}

const photo = { width: 8000, height: 6000 };
const box = { width: 800, height: 600 };

function begun() {
  const clock = handClock();
  const rested: (View | null)[] = [];
  const told: View[] = [];
  const live = liveView((view) => rested.push(view), clock);
  live.lay(photo, box);
  live.follow((view) => told.push(view));
  return { live, clock, rested, told };
}
const panned = (x: number, y: number) => (view: View) => ({
  ...view,
  pan: { x: view.pan.x + x, y: view.pan.y + y },
});

describe("a view in a moving hand", () => {
  it("is told to who follows at each step, and to the screen once, when the hand rests", () => {
    const { live, clock, rested, told } = begun();
    for (let step = 0; step < 30; step += 1) {
      live.move(panned(2, 0));
      clock.pass(16);
    }
    expect([told.length, rested.length]).toEqual([30, 0]);
    clock.pass(REST_MS);
    expect(rested).toEqual([live.now()]);
    expect(live.now().pan.x).toBeCloseTo(fitView(photo, box).pan.x + 60, 9);
    expect(live.rest()).toBe(false);
  });

  it("is told at once by a button, before the next press, and where nothing is painted any more", () => {
    const { live, clock, rested } = begun();
    live.put({ zoom: 1, pan: { x: 0, y: 0 } });
    expect(rested.length).toBe(1);
    live.move(panned(5, 0));
    expect([live.rest(), rested.length]).toEqual([true, 2]);
    clock.pass(1000);
    expect(rested.length).toBe(2);
    live.move(panned(-700, 0));
    expect(rested.length).toBe(3);
    live.hold(true);
    live.move(panned(3, 0));
    clock.pass(10 * REST_MS);
    expect(rested.length).toBe(3);
    live.hold(false);
    clock.pass(REST_MS);
    expect(rested.length).toBe(4);
    live.put(null);
    expect(rested.at(-1)).toBe(null);
    expect(live.now()).toEqual(fitView(photo, box));
  });

  it("law: what was painted, carried, lies where it would be painted now", () => {
    const places = fc.integer({ min: 0, max: 6000 });
    const views = fc.record({
      zoom: fc.double({ min: 0.05, max: 4, noNaN: true }),
      pan: fc.record({ x: fc.integer({ min: -900, max: 900 }), y: fc.integer({ min: -900, max: 900 }) }),
    });
    fc.assert(
      fc.property(views, views, places, places, (painted, now, x, y) => {
        const { k, by } = carried(painted, now);
        const was = toScreen(painted, { x, y });
        const is = toScreen(now, { x, y });
        expect(was.x * k + by.x).toBeCloseTo(is.x, 6);
        expect(was.y * k + by.y).toBeCloseTo(is.y, 6);
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it("keeps the point under the hand while it zooms, and never paints more than it may hold", () => {
    const { live } = begun();
    const at = { x: 200, y: 300 };
    const under = toPhoto(live.now(), at);
    for (let i = 0; i < 6; i += 1) live.move((view) => zoomAt(view, at, 1.1, 0.01));
    const still = toPhoto(live.now(), at);
    expect(still.x).toBeCloseTo(under.x, 6);
    for (const width of [300, 800, 1600, 2560, 3840])
      for (const ratio of [1, 2]) {
        const room = beyond({ width, height: width * 0.6 }, ratio);
        const pixels = (width + 2 * room) * (width * 0.6 + 2 * room) * ratio ** 2;
        expect(room === 0 || pixels <= 8_000_000).toBe(true);
      }
  });
});
