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
