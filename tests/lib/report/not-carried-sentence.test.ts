import { describe, expect, it } from "vitest";
import { listCriteria, shopRowsFrom } from "@/lib/accept";
import { notCarriedSentence } from "@/lib/report";

describe("what the shop's own limits did not carry over, in words", () => {
  it("names every clause with its number and the code it is of", () => {
    for (const { id } of listCriteria()) {
      const { notCarried } = shopRowsFrom(id, { kind: "fillet", thicknessMm: 8 })!;
      const sentence = notCarriedSentence(notCarried);
      if (notCarried.clauses.length > 0) expect(sentence, id).toMatch(/^Not looked at here: /);
      for (const { clause, title } of notCarried.clauses)
        expect(sentence, id).toContain(`${clause.replace(/^Table 1, /, "")} ${title}`);
      expect(sentence, id).toContain(notCarried.clauses.length > 0 ? notCarried.from : "");
    }
  });

  it("says a table that all of them stand in once, and keeps what they do not share", () => {
    const one = { clause: "Table 1, 1.20", title: "Insufficient throat", why: "" };
    const sentence = (...clauses: (typeof one)[]) => notCarriedSentence({ from: "Code 2014", clauses });
    expect(sentence(one, { ...one, clause: "Table 1, 4.1", title: "Sums" })).toBe(
      "Not looked at here: 1.20 Insufficient throat; 4.1 Sums (of Code 2014, Table 1).",
    );
    expect(sentence(one, { ...one, clause: "Table 2, 4.1", title: "Sums" })).toBe(
      "Not looked at here: Table 1, 1.20 Insufficient throat; Table 2, 4.1 Sums (of Code 2014).",
    );
  });

  it("claims nothing where nothing is known of", () => {
    expect(notCarriedSentence(null)).toBe("");
    expect(notCarriedSentence({ from: "a code", clauses: [] })).toBe("");
  });
});
