import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changeSetup, undoSetup, type UndoableSetup } from "@/components/bead/setup-undo";
import { emptyRunSetup, exampleSetups, type RunSetup } from "@/lib/setup";

const volts = (value: number | null): RunSetup => ({ ...emptyRunSetup, volts: value });
const fresh: UndoableSetup = { setup: emptyRunSetup, setupsBefore: [] };
const through = (setups: readonly RunSetup[]): UndoableSetup => setups.reduce(changeSetup, fresh);

describe("undoing a set-up", () => {
  it("brings back what another set-up wrote over, whole", () => {
    const planned = exampleSetups[0]!.setup;
    const last = exampleSetups[1]!.setup;
    expect(undoSetup(through([planned, last])).setup).toEqual(planned);
  });

  it("takes what was typed into one field as one step, and the next field as another", () => {
    const typed = through([volts(1), volts(17), volts(17.5)]);
    expect(typed.setupsBefore).toEqual([emptyRunSetup]);
    const more = changeSetup(typed, { ...volts(17.5), arcLength: null, thicknessMm: 6 } as RunSetup);
    expect(undoSetup(more).setup).toEqual(volts(17.5));
    expect(undoSetup(undoSetup(more)).setup).toEqual(emptyRunSetup);
  });

  it("leads back to the beginning from anywhere, and no further", () => {
    const one = fc.oneof(
      fc.integer({ min: 10, max: 40 }).map(volts),
      fc.constantFrom(...exampleSetups.map(({ setup }) => setup)),
    );
    fc.assert(
      fc.property(fc.array(one, { maxLength: 30 }), (setups) => {
        let state = through(setups);
        expect(state.setup).toEqual(setups.at(-1) ?? emptyRunSetup);
        for (let i = 0; i <= setups.length; i += 1) state = undoSetup(state);
        expect(state).toEqual(fresh);
      }),
      { seed: 20261126 },
    );
  });
});
