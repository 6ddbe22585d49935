import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema, wouldChange, type DiagnoseInput } from "@/lib/diagnose";
import { withAnswer } from "@/lib/diagnose/would-change";
import { imperfections } from "@/lib/trade";
import cases from "@/tests/cases/diagnose/published.json";

const inputs = cases.slice(0, 16).map(({ given }) => DiagnoseInputSchema.parse(given));
const found = (input: DiagnoseInput) => {
  const answer = diagnose(input);
  if (!answer.ok) throw new Error(answer.issues[0]?.code);
  return answer.value;
};
const firstOf = (input: DiagnoseInput) => found(input).causes[0]!;
const chanceOf = (input: DiagnoseInput, id: string) =>
  found(input).causes.find((cause) => cause.id === id)!.probability;

describe("what would change the mind about the first cause", () => {
  it("does it, when it is answered", () => {
    let turned = 0;
    for (const input of inputs) {
      const change = wouldChange(input, found(input));
      if (change === null) continue;
      const before = firstOf(input);
      const after = withAnswer(input, change.check, change.answer.id);
      expect(chanceOf(after, before.id)).toBe(change.probability);
      if (change.then === null) expect(firstOf(after).id).toBe(before.id);
      else expect([firstOf(after).id, before.id === change.then.id]).toEqual([change.then.id, false]);
      turned += change.then === null ? 0 : 1;
    }
    expect(turned).toBeGreaterThan(inputs.length / 2);
  });

  it("counts an answer by how likely it is: over all answers to a question the first cause keeps its probability", () => {
    // Law of total probability: P(cause) = sum of P(answer) · P(cause | answer).
    const input = inputs[0]!;
    const { causes, checks } = found(input);
    const first = causes[0]!;
    const questions = checks.filter(({ id }) => !id.startsWith("look:")).slice(0, 6);
    expect(questions.length).toBe(6);
    for (const check of questions) {
      const kept = check.answers.reduce(
        (sum, { id, probability }) => sum + probability * chanceOf(withAnswer(input, check, id), first.id),
        0,
      );
      expect(kept, check.id).toBeCloseTo(first.probability, 9);
    }
  });

  it("asks nobody to look for a crack to find out about the volts", () => {
    for (const input of inputs) {
      const id = wouldChange(input, found(input))?.check.imperfection ?? null;
      expect(id !== null && imperfections[id].inspectorFirst).toBe(false);
    }
  });

  it("is nothing where nothing is left to ask", () => {
    expect(wouldChange(inputs[0]!, { causes: found(inputs[0]!).causes, checks: [] })).toBeNull();
    expect(wouldChange(inputs[0]!, { causes: [], checks: [] })).toBeNull();
  });
});
