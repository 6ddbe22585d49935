import { describe, expect, it } from "vitest";
import { planRun, PlanAskSchema, type Plan, type PlanAsk } from "@/lib/plan";
import { inDepth } from "../../setup/in-depth";
import { thicknesses, wires } from "./grid";

const uphill: readonly Partial<PlanAsk>[] = [
  { position: "vertical", progression: "up" },
  { position: "overhead" },
];

const planned = (part: Partial<PlanAsk>): Plan | null => {
  const made = planRun(PlanAskSchema.parse({ ...part, inputPower: "400V-3ph" }));
  return made.ok ? made.value : null;
};
const ampsOf = ({ gives }: Plan): number => gives.find(({ code }) => code === "amps")!.value;
const isFree = ({ limits }: Plan): boolean => limits.every(({ code }) => code !== "feed-limited");

/** Every wire out of position beside the same run in the flat. */
const pairs = wires
  .filter((_, i) => i % inDepth(5, 1) === 0)
  .flatMap((wire) =>
    (["tee", "groove-backed"] as const).flatMap((joint) =>
      thicknesses
        .filter((_, i) => i % inDepth(3, 1) === 1 % inDepth(3, 1))
        .flatMap((thicknessMm) => {
          const flat = planned({ ...wire, joint, thicknessMm, position: "flat" });
          return uphill.flatMap((place) => {
            const up = flat && planned({ ...wire, joint, thicknessMm, ...place });
            return up ? [{ name: JSON.stringify({ ...wire, joint, thicknessMm, ...place }), flat, up }] : [];
          });
        }),
    ),
  );

/** Amperes out of position as a share of those in the flat. */
const shareOf = ({ flat, up }: (typeof pairs)[number]): number => ampsOf(up) / ampsOf(flat);

describe("out of position beside the flat", () => {
  // Rule of thumb of the trade: feed, volts and amperes 30 to 40 % down from flat (common practice, no source).
  it("a fillet in carbon steel takes 30 to 40 % fewer amperes wherever only the plate sets the feed", () => {
    const free = pairs.filter(
      ({ flat, up }) =>
        isFree(flat) && isFree(up) && flat.setup.joint === "tee" && flat.setup.baseMetal === "carbon-steel",
    );
    expect(free.length).toBeGreaterThan(inDepth(4, 50));
    // A step of the dial on either side.
    const outside = free.filter((pair) => shareOf(pair) < 0.59 || shareOf(pair) > 0.71);
    expect(outside.map((pair) => `${pair.name}: ${shareOf(pair)}`)).toEqual([]);
  });

  it("nothing takes more amperes than in the flat, beyond a step of the dial, whatever else sets the feed", () => {
    expect(pairs.length).toBeGreaterThan(inDepth(40, 500));
    expect(pairs.filter((pair) => shareOf(pair) > 1.02).map(({ name }) => name)).toEqual([]);
  });
});
