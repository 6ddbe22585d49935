import { expect, it } from "vitest";
import { issue } from "@/lib/base";
import { traceSentence } from "@/lib/trace";
import { traceSentences } from "@/lib/trace/sentences";

it("every refusal is a sentence about what to do, with its numbers", () => {
  for (const code of Object.keys(traceSentences) as (keyof typeof traceSentences)[]) {
    const said = traceSentence(issue(code, [], { widthPx: 31, leastPx: 45, percent: 40 }));
    expect(said).toMatch(/\.$/);
    expect(said).not.toMatch(/undefined|NaN/);
  }
});

it("what a better photo would mend says how to take it", () => {
  const said = (code: keyof typeof traceSentences): string =>
    traceSentence(issue(code, [], { widthPx: 31, leastPx: 45, percent: 40 }));
  expect(said("bead-too-small")).toMatch(/31 pixels.*Move closer/);
  expect(said("photo-blurred")).toMatch(/Hold the phone still.*focus/);
  expect(said("light-blown")).toMatch(/40 %.*shade the lamp.*without flash/);
  expect(said("no-bead-in-picture")).toMatch(/straight above.*fills most of the picture/);
  expect(said("two-beads")).toMatch(/photograph it alone/);
});
