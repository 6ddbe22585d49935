import fc from "fast-check";
import { JudgeInputSchema, listCriteria, type JudgeInput } from "@/lib/accept";
import { flatThroat, type Quantity } from "@/lib/measure";
import { toeToToe } from "@/lib/measure/fillet-section";
import type { ImperfectionId } from "@/lib/trade";

export function quantity(
  value: number,
  expandedUncertainty = 0,
  source: Quantity["source"] = "gauge",
): Quantity {
  return { unit: "mm", value, expandedUncertainty, source, budget: [] };
}

const anyQuantity = (max: number) =>
  fc
    .record({
      value: fc.double({ min: 0, max, noNaN: true }),
      u: fc.double({ min: 0, max: max / 4, noNaN: true }),
      source: fc.constantFrom("photo" as const, "gauge" as const),
    })
    .map(({ value, u, source }) => quantity(value, u, source));

const orNull = <T>(arbitrary: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 9, arbitrary }, { weight: 1, arbitrary: fc.constant(null) });

const seen: readonly ImperfectionId[] = [
  "surface-porosity",
  "undercut",
  "overlap",
  "crater-pipe",
  "underfill",
  "root-concavity",
  "poor-start",
  "arc-strike",
  "spatter",
];

const observation = (lengthMm: number) =>
  fc
    .record({
      imperfection: fc.constantFrom(...seen),
      place: fc.constantFrom("left-toe" as const, "right-toe" as const, "face" as const, "root" as const),
      from: fc.double({ min: 0, max: lengthMm * 0.9, noNaN: true }),
      reach: fc.double({ min: 0, max: 15, noNaN: true }),
      placed: fc.boolean(),
      depthMm: orNull(anyQuantity(0.6)),
      heightMm: orNull(anyQuantity(0.6)),
      diameterMm: orNull(anyQuantity(2)),
    })
    .map(({ from, reach, placed, ...rest }) => ({
      ...rest,
      alongMm: placed ? ([from, from + reach] as const) : null,
      lengthMm: quantity(reach, reach / 20, "photo"),
      areaMm2: null,
    }));

/** A weld that is mostly sound, so that accept, reject and cannot-say all happen. */
export const judgeInputs = (criteriaId: string): fc.Arbitrary<JudgeInput> =>
  fc
    .record({
      kind: fc.constantFrom("fillet" as const, "butt" as const),
      thicknessMm: orNull(fc.double({ min: 1, max: 30, noNaN: true })),
      throatMm: fc.double({ min: 3, max: 12, noNaN: true }),
      lengthMm: fc.double({ min: 40, max: 900, noNaN: true }),
      legs: fc.tuple(
        fc.double({ min: 0.95, max: 1.2, noNaN: true }),
        fc.double({ min: 0.95, max: 1.2, noNaN: true }),
      ),
      convexity: orNull(anyQuantity(2)),
      reinforcement: orNull(anyQuantity(2)),
      width: orNull(anyQuantity(15)),
      misalignment: orNull(anyQuantity(1)),
      observations: fc.array(observation(40), { maxLength: 4 }),
      lookedForAll: fc.boolean(),
      dropped: fc.array(fc.constantFrom(...seen), { maxLength: 2 }),
    })
    .map((one) => {
      const all = listCriteria().find(({ id }) => id === criteriaId)!.imperfections;
      const z = one.throatMm * Math.SQRT2;
      return JudgeInputSchema.parse({
        criteriaId,
        weld: {
          kind: one.kind,
          thicknessMm: one.thicknessMm,
          throatMm: one.throatMm,
          lengthMm: one.lengthMm,
          singleSided: false,
          seam: "plate",
          completePenetration: true,
          transverseToTension: false,
          stiffenerToWeb: false,
        },
        observations: one.observations.map((observed, index) => ({ ...observed, id: `o${index}` })),
        beadReadings: {
          leg1: quantity(z * one.legs[0]),
          leg2: quantity(z * one.legs[1]),
          // One cross section: the throat follows from legs and convexity.
          throat: quantity(flatThroat(z * one.legs[0], z * one.legs[1]) + (one.convexity?.value ?? 0)),
          convexity: one.convexity,
          reinforcement: one.reinforcement,
          width: one.kind === "fillet" ? quantity(toeToToe(z * one.legs[0], z * one.legs[1])) : one.width,
          misalignment: one.misalignment,
        },
        lookedFor: one.lookedForAll ? all : all.filter((id) => !one.dropped.includes(id)),
      });
    });
