import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alsoChoose, choosingOff, isChosen, MOST_CHOSEN, readChosen } from "@/components/beads/chosen";

const bead = fc.record({ id: fc.stringMatching(/^[a-z]\d{0,2}$/), number: fc.nat(400) });
const beads = fc.array(bead, { maxLength: 300 });

describe("what is chosen in the list", () => {
  it("holds each bead once, in the order of choosing, and never more than fit", () => {
    fc.assert(
      fc.property(beads, beads, (before, more) => {
        const chosen = alsoChoose(alsoChoose([], before), more);
        expect(new Set(chosen.map(({ id }) => id)).size).toBe(chosen.length);
        expect(chosen.length).toBeLessThanOrEqual(MOST_CHOSEN);
        expect(alsoChoose([], before)).toEqual(chosen.slice(0, alsoChoose([], before).length));
        const asked = [...before, ...more].filter(({ id }) => !isChosen(chosen, id));
        if (asked.length > 0) expect(chosen.length).toBe(MOST_CHOSEN);
      }),
      { seed: 261126 },
    );
  });

  it("loses what is taken off and nothing else", () => {
    fc.assert(
      fc.property(beads, beads, (all, off) => {
        const chosen = alsoChoose([], all);
        const left = choosingOff(chosen, off);
        for (const { id } of chosen) expect(isChosen(left, id)).toBe(!off.some((one) => one.id === id));
      }),
      { seed: 261126 },
    );
  });

  it("comes back from what the browser kept, and from nonsense as nothing", () => {
    const chosen = [{ id: "a", number: 3 }];
    expect(readChosen(JSON.stringify(chosen))).toEqual(chosen);
    for (const text of [null, "", "{", "7", '{"id":"a"}', '[{"id":3,"number":"x"},null]'])
      expect(readChosen(text)).toEqual([]);
  });
});
