import { describe, expect, it } from "vitest";
import { assessBead, BeadJudgementSchema, emptyBeadContent } from "@/lib/assess";
import { trialSheet, type TrialRunInput } from "@/lib/report";
import { responsesOf } from "@/lib/trials";
import { metric } from "@/lib/units";
import { trialOf } from "../trials/simulated";

const bead = (number: number, legs: readonly number[]) => ({
  number,
  ...assessBead({
    content: {
      ...emptyBeadContent,
      judgement: BeadJudgementSchema.parse({
        readings: legs.map((value, i) => ({
          quantity: i === 0 ? "leg-1" : "leg-2",
          value,
          instrument: "Gauge 1",
          resolution: 0.5,
        })),
      }),
    },
    photos: [],
  }),
});

const trial = trialOf(1, {
  way: "surface",
  budget: 8,
  aim: { response: "leg", want: "target", target: 6 },
  noise: 0.3,
});
const runs = (count: number, legOf: (at: number) => number): readonly TrialRunInput[] =>
  trial.points.slice(0, count).map(([at], place) => {
    const leg = legOf(at!);
    return { place, beadId: `b${place}`, bead: bead(place + 1, [leg, leg + 0.2]) };
  });
const { low, high } = trial.knobs[0]!;

describe("what a bead says of a response", () => {
  it("is the shorter leg, where both were read", () => {
    expect(responsesOf(bead(1, [6, 5.5])).leg).toEqual({ value: 5.5, spread: 0.5 });
    expect(responsesOf(bead(1, [6])).leg).toBeNull();
  });
  it("is nothing where nobody looked", () => {
    expect(responsesOf(bead(1, []))).toEqual({
      width: null,
      leg: null,
      convexity: null,
      evenness: null,
      marks: null,
    });
  });
});

describe("a trial in words", () => {
  it("says what is next, and names no best before a bead was read", () => {
    const sheet = trialSheet({ content: trial, number: 2 }, [], metric);
    expect(sheet.next).toMatch(/^Run 1 of 8: travel speed \d+ mm\/min\.$/);
    expect(sheet.best).toMatch(/nothing is known/);
    expect(sheet.rows).toHaveLength(8);
  });

  it("asks for the reading of what was run", () => {
    const unread = trial.points.map((_, place) => ({
      place,
      beadId: `b${place}`,
      bead: bead(place + 1, []),
    }));
    expect(trialSheet({ content: trial, number: 2 }, unread, metric).next).toMatch(/wait for their reading/);
  });

  it("names no best from beads that differ by no more than they scatter", () => {
    const flat = runs(8, (at) => 6 + 0.1 * Math.sin(at));
    expect(trialSheet({ content: trial, number: 2 }, flat, metric).best).toMatch(/No best is named/);
  });

  it("names a best where it stands out, with the region it may lie in, and says when it is over", () => {
    const course = runs(8, (at) => 6 + 5 * Math.abs((at - low) / (high - low) - 0.5));
    const sheet = trialSheet({ content: trial, number: 2 }, course, metric);
    expect(sheet.best).toMatch(/^Best so far: travel speed/);
    expect(sheet.region).toMatch(/The best lies within/);
    expect(sheet.next).toMatch(/All its beads were run/);
    expect(sheet.unknown.at(-1)).toMatch(/outside these ranges/);
  });

  it("keeps a row for a bead that was deleted", () => {
    const [first] = trialSheet(
      { content: trial, number: 2 },
      [{ place: 0, beadId: "gone", bead: null }],
      metric,
    ).rows;
    expect(first).toMatchObject({ bead: "deleted", beadId: null, value: null });
  });

  it("gives the effects of a factorial with their interval, by the repeats of the middle", () => {
    const factorial = trialOf(2, {
      way: "factorial",
      budget: 7,
      aim: { response: "leg", want: "least", target: null },
    });
    const inputs = factorial.points.map((at, place) => ({
      place,
      beadId: `b${place}`,
      bead: bead(place + 1, [at[0]! / 100 + 0.1 * (place % 3), 20]),
    }));
    const { effects } = trialSheet({ content: factorial, number: 1 }, inputs, metric);
    expect(effects).toHaveLength(3);
    expect(effects[0]).toMatch(/^Travel speed from .* \(.* to .*, 95 %\)\.$/);
  });
});
