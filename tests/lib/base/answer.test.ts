import { describe, expect, it } from "vitest";
import { answerOf, fail, inWords, issue, linesOf, ok, refused, type Issue } from "@/lib/base";

const sentence = ({ code, data }: { code: string; data: Readonly<Record<string, string | number>> }) =>
  `${code} ${data.atMost ?? "nothing"}.`;

describe("an answer", () => {
  it("hands a value on as it is", () => {
    const value = { revision: 3 };
    expect(answerOf(ok(value), sentence)).toEqual({ ok: true, value });
  });

  it("finds the sentence of every issue, in their order, with where each lies", () => {
    const result = fail<Issue>(issue("too-long", ["rows", 2, "title"], { atMost: 120 }), issue("gone"));
    expect(answerOf(result, sentence)).toEqual({
      ok: false,
      issues: [
        { code: "too-long", path: ["rows", 2, "title"], message: "too-long 120." },
        { code: "gone", message: "gone nothing." },
      ],
    });
  });

  it("leaves the path out where an issue is about the whole", () => {
    expect(linesOf([issue("gone")], sentence)[0]).not.toHaveProperty("path");
  });

  it("says each sentence once", () => {
    const same = [issue("gone", ["a"]), issue("too-long"), issue("gone", ["b"])];
    expect(inWords({ ok: false, issues: linesOf(same, sentence) })).toBe("gone nothing. too-long nothing.");
    expect(inWords(refused("full", "The store is full."))).toBe("The store is full.");
  });
});
