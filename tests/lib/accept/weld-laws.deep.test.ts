import { expect, it } from "vitest";
import { judgeParsed } from "@/lib/accept/judge";
import { brokenLaws } from "./broken-laws";

/** The laws of weld-laws.test.ts on welds that the ordinary run does not see. */
const WELDS = 200_000;

it(`holds four laws on ${WELDS} more welds`, () => {
  const { broken, counts } = brokenLaws(
    (input) => {
      const result = judgeParsed(input);
      if (!result.ok) throw new Error(JSON.stringify(result.issues));
      return result.value;
    },
    WELDS,
    1_000_001,
  );
  console.log(`${WELDS} welds: ${JSON.stringify(counts)}`);
  expect(broken.slice(0, 20)).toEqual([]);
});
