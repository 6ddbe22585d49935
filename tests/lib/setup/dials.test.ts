import { expect, it } from "vitest";
import { checkSetup, emptyRunSetup, exampleSetups, RunSetupSchema } from "@/lib/setup";

/** Machines for 120 V show letters, numbers or ticks; none of them is a voltage (common practice, no source). */
const marks = ["B", "4", "half way to 5", "40", "6 of 10"];

it("where a knob stands is kept as it was read, and says nothing of volts or feed", () => {
  for (const { setup } of [{ setup: emptyRunSetup }, ...exampleSetups])
    for (const mark of marks) {
      const read = RunSetupSchema.parse({ ...setup, dialVoltage: mark, dialFeed: mark });
      expect([read.dialVoltage, read.dialFeed]).toEqual([mark, mark]);
      expect([read.volts, read.wireFeedMPerMin]).toEqual([setup.volts, setup.wireFeedMPerMin]);
      expect(checkSetup(read)).toEqual(checkSetup(setup));
    }
});
