import { describe, expect, it } from "vitest";
import { causeIds, DiagnoseInputSchema, diagnoseVocabulary } from "@/lib/diagnose";
import { keptBack, opened } from "./kept-back";
import type { Expectation, Scenario } from "./scenario";
import { scenarios } from "./scenarios";

const known = new Set<string>(causeIds);
const answersOf = new Map(
  diagnoseVocabulary().questions.map(({ id, answers }) => [id as string, answers.map((answer) => answer.id)]),
);

/** What is wrong with one scenario as data, in words; nothing is diagnosed here. */
function faults({ id, given, expect: expected }: Scenario): readonly string[] {
  const parsed = DiagnoseInputSchema.safeParse(given);
  const unknownCauses = causesNamed(expected).filter((cause) => !known.has(cause));
  const unknownAnswers = Object.entries(given.answers ?? {}).filter(
    ([question, answer]) => !answersOf.get(question)?.includes(answer),
  );
  return [
    ...(parsed.success ? [] : [`${id}: ${parsed.error.message}`]),
    ...unknownCauses.map((cause) => `${id}: no cause is called ${cause}`),
    ...unknownAnswers.map(([question, answer]) => `${id}: ${question} has no answer ${answer}`),
    ...incoherences(expected).map((sentence) => `${id}: ${sentence}`),
  ];
}

function causesNamed({ top, change, avoid }: Expectation): readonly string[] {
  return [...(top ?? []), ...(change?.causes ?? []), ...(avoid ?? [])];
}

/** An expectation that no answer could meet, or that asks for nothing. */
function incoherences({
  top,
  change,
  avoid,
  flags,
  cautions,
  inspector,
  quiet,
}: Expectation): readonly string[] {
  const wanted = [...(top ?? []), ...(change?.causes ?? [])];
  const { lo, hi } = change ?? {};
  return [
    ...(avoid ?? []).filter((cause) => wanted.includes(cause)).map((cause) => `${cause} wanted and to avoid`),
    ...(lo !== undefined && hi !== undefined && lo > hi ? ["a span from high to low"] : []),
    ...((lo === undefined) === (hi === undefined) ? [] : ["a span with one end"]),
    ...(quiet && (top || change || flags || cautions || inspector)
      ? ["quiet, and yet something is due"]
      : []),
    ...(quiet || top || flags ? [] : ["nothing is asked for"]),
  ];
}

describe.each([
  ["looked at", scenarios, 72],
  ["kept back", keptBack, 63],
])("the scenarios %s", (_, list, count) => {
  it("are all there, each with an id of its own", () => {
    expect(list).toHaveLength(count);
    expect(new Set([...scenarios, ...keptBack, ...opened].map(({ id }) => id)).size).toBe(72 + 64);
  });

  it("parse, and name causes, questions and answers that exist", () => {
    expect(list.flatMap(faults)).toEqual([]);
  });
});

describe("the check of a scenario", () => {
  const sound = scenarios.find(({ expect: { change } }) => change?.lo !== undefined) as Scenario;
  const [cause] = sound.expect.top as [string];

  it.each<[string, Partial<Scenario>]>([
    ["a reading out of bounds", { given: { setup: { volts: -1 } } }],
    ["a question that nobody asks", { given: { ...sound.given, answers: { "moon-phase": "full" } } }],
    ["an answer that does not exist", { given: { ...sound.given, answers: { "arc-length": "maybe" } } }],
    ["a cause that does not exist", { expect: { top: ["bad-luck" as never] } }],
    ["a cause wanted and to avoid", { expect: { ...sound.expect, avoid: [cause as never] } }],
    ["a span from high to low", { expect: { ...sound.expect, change: { causes: [], lo: 2, hi: 1 } } }],
    ["nothing asked for", { expect: { top: null } }],
    ["quiet beside a change", { expect: { ...sound.expect, quiet: true } }],
  ])("finds %s", (_, wrong) => {
    expect(faults(sound)).toEqual([]);
    expect(faults({ ...sound, ...wrong })).toHaveLength(1);
  });
});
