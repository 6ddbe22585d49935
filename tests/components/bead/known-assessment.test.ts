import { beforeEach, expect, it, vi } from "vitest";
import { benchAssessment } from "@/components/bead/bench-assessment";
import { startWork, toContent, work, type WorkState } from "@/components/bead/work-state";
import * as assessRoom from "@/lib/assess";
import { emptyBeadContent } from "@/lib/assess";
import { newMark } from "@/lib/marks";
import { chances } from "../../faults/kills";
import { facts, meltedFillet, sectionBead } from "../../lib/assess/section-bead";

vi.mock("@/lib/assess", async (original) => {
  const room = await original<typeof assessRoom>();
  return { ...room, assess: vi.fn<typeof room.assess>(room.assess) };
});
const asked = vi.mocked(assessRoom.assess);
beforeEach(() => {
  asked.mockClear();
});

const shop = { shopCounts: {}, shopSets: [] };
const none: [] = [];

it("a bead is worked out once for each state of it, and again once anything of it or of the shop is other", () => {
  const state = startWork(emptyBeadContent, []);
  const first = benchAssessment(toContent(state), none, shop);
  expect(benchAssessment(toContent(state), none, shop)).toBe(first);
  expect(asked).toHaveBeenCalledTimes(1);
  const others: Parameters<typeof benchAssessment>[] = [
    [toContent(work(state, { type: "name", welder: "Imke Tal" })), none, shop],
    [toContent(state), [], shop],
    [toContent(state), none, { ...shop, shopCounts: {} }],
    [toContent(state), none, { ...shop, shopSets: [] }],
  ];
  for (const [i, other] of others.entries()) {
    benchAssessment(...other);
    expect(asked, `other ${i}`).toHaveBeenCalledTimes(2 + i);
  }
});

type Action = Parameters<typeof work>[1];

/** Something of each kind that can be done on the workbench. */
function someAction(state: WorkState, next: (below: number) => number): Action {
  const draw = (action: Extract<Action, { type: "draw" }>["action"]): Action => ({
    ...{ type: "draw", photoId: "p1", action },
  });
  const at = { x: next(400), y: next(300) };
  const pore = newMark(`m${next(1e6)}`, "surface-porosity", { kind: "point", at, radius: 3 + next(5) });
  const [first] = state.photos;
  const all: readonly Action[] = [
    { type: "name", welder: `W-${next(9)}` },
    { type: "setup", setup: { ...state.setup, volts: 15 + next(15) } },
    { type: "setup.undo" },
    { type: "judgement", change: { lookedFor: next(2) === 0 ? [] : ["undercut"] } },
    draw({ type: "mark.add", mark: pore }),
    draw({ type: "undo" }),
    draw({ type: "redo" }),
    { type: "section", photoId: "p1", action: { type: "section.outline", points: meltedFillet.outline } },
    { type: "photo.role", photoId: "p1", role: next(2) === 0 ? "face" : "back" },
    ...(first
      ? [{ type: "photo.stored", photo: { ...first, widthPx: 800 + next(4000), heightPx: 900 } } as const]
      : []),
  ];
  return all[next(all.length)]!;
}

/** Compared without what an answer works out only when it is shown. */
const said = ({ photos, setup, evidence, verdict, stops, answer }: ReturnType<typeof benchAssessment>) =>
  structuredClone({ photos, setup, evidence, verdict, stops, answer });

it("what is remembered of any state is what is worked out of it anew, whatever was asked before", () => {
  let remembered = 0;
  for (let seed = 1; seed <= 12; seed += 1) {
    const next = chances(seed);
    const states = [startWork(sectionBead(meltedFillet), facts)];
    for (let step = 0; step < 8; step += 1)
      states.push(work(states.at(-1)!, someAction(states.at(-1)!, next)));
    for (let turn = 0; turn < 16; turn += 1) {
      // A page may ask for what is typed and for photos that are newer, and go back to a state that it had given up.
      const [content, photos] = [states[next(states.length)]!, states[next(states.length)]!.photos];
      const calls = asked.mock.calls.length;
      const found = benchAssessment(toContent(content), photos, shop);
      remembered += asked.mock.calls.length === calls ? 1 : 0;
      const anew = benchAssessment(toContent(structuredClone(content)), structuredClone(photos), shop);
      expect(said(found), `seed ${seed}, turn ${turn}`).toEqual(said(anew));
    }
  }
  expect(remembered).toBeGreaterThan(20);
});
