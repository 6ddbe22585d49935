import { formulaText } from "@/lib/accept/formula";
import type { Constant, CriteriaSet, Formula, Test } from "@/lib/accept/rule";

/** "0.5", or "2 | 1.5875" where SI and US figures differ; mm. */
function both(formula: Formula | Constant): string {
  const [si, us] = [formulaText(formula, "si"), formulaText(formula, "us")];
  return si === us ? si : `${si} | ${us}`;
}

function words(test: Test): string {
  if (!("limit" in test)) return test.test;
  const name = test.test === "bead" ? `${test.figure} ${test.comparison}` : test.test;
  const window = test.test === "total" && test.window !== null ? ` in ${both(test.window)}` : "";
  const only =
    test.test === "total" && test.only ? ` of those ${test.only.bound} ${both(test.only.value)}` : "";
  const beyond = "beyond" in test && test.beyond ? ", beyond it a person" : "";
  return `${name} ${both(test.limit)}${window}${only}${beyond}`;
}

/** Every figure of a set, rule by rule, in words that a person can compare with the document. */
export function figuresOf(set: CriteriaSet): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(
    set.criteria.map(({ id, variants }) => [
      id,
      [...new Set(variants.flatMap(({ tests }) => tests.map(words)))].sort(),
    ]),
  );
}
