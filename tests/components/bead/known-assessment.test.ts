import { expect, it, vi } from "vitest";
import { benchAssessment } from "@/components/bead/bench-assessment";
import { startWork, toContent, work } from "@/components/bead/work-state";
import * as assessRoom from "@/lib/assess";
import { emptyBeadContent } from "@/lib/assess";

vi.mock("@/lib/assess", async (original) => {
  const room = await original<typeof assessRoom>();
  return { ...room, assess: vi.fn<typeof room.assess>(room.assess) };
});

const shop = { shopCounts: {}, shopSets: [] };

it("a bead is worked out once for each state of it, and again once anything of it or of the shop is other", () => {
  const asked = vi.mocked(assessRoom.assess);
  const state = startWork(emptyBeadContent, []);
  const first = benchAssessment(toContent(state), [], shop);
  expect(benchAssessment(toContent(state), [], shop)).toBe(first);
  expect(asked).toHaveBeenCalledTimes(1);

  const edited = work(state, { type: "name", welder: "Imke Tal" });
  expect(edited).not.toBe(state);
  benchAssessment(toContent(edited), [], shop);
  expect(asked).toHaveBeenCalledTimes(2);
  benchAssessment(toContent(state), [], { ...shop, shopCounts: {} });
  expect(asked).toHaveBeenCalledTimes(3);
  benchAssessment(toContent(state), [], { ...shop, shopSets: [] });
  expect(asked).toHaveBeenCalledTimes(4);
});
