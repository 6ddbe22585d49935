import fc from "fast-check";
import { expect, test } from "vitest";
import { checkSetup, emptyRunSetup, usualForClass, type RunSetup } from "@/lib/setup";
import { setupArb } from "./setup-arbitrary";

const offered = (fields: Partial<RunSetup>) =>
  Object.fromEntries(
    usualForClass({ ...emptyRunSetup, ...fields }).map((usual) => [usual.field, usual.value]),
  );

test("a class that settles everything offers everything, in unknown fields only", () => {
  const all = { process: "FCAW-S", polarity: "DCEP", gas: "none", travelDirection: "drag" };
  expect(offered({ electrodeClass: "e308lt0-3" })).toEqual(all);
  expect(offered({ electrodeClass: "E71T-11" })).toEqual({ ...all, polarity: "DCEN" });
  expect(offered({ electrodeClass: "E71T-11", polarity: "DCEP", gas: "none" })).toEqual({
    process: "FCAW-S",
    travelDirection: "drag",
  });
});

test("where the class leaves a choice, nothing is offered for it", () => {
  expect(offered({ electrodeClass: "E71T-1" })).not.toHaveProperty("gas");
  expect(offered({ electrodeClass: "E71T-5C" })).not.toHaveProperty("polarity");
  expect(offered({ electrodeClass: "E71T-G" })).toEqual({ travelDirection: "drag" });
  expect(offered({ electrodeClass: "ER70S-6" })).toEqual({});
  expect(offered({ electrodeClass: "shop wire" })).toEqual({});
  expect(offered({})).toEqual({});
});

test("taking every offer never adds a finding about the class at the fields offered", () => {
  fc.assert(
    fc.property(setupArb, (setup) => {
      const offers = usualForClass(setup);
      const taken = { ...setup, ...Object.fromEntries(offers.map((offer) => [offer.field, offer.value])) };
      const against = checkSetup(taken).filter(
        (f) => f.code.endsWith("against-class") && offers.some((offer) => offer.field === f.fields[0]),
      );
      expect(against).toEqual([]);
    }),
    { numRuns: 2000 },
  );
});
