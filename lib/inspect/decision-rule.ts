import { needsCheck, type Source } from "@/lib/base";
import { cite } from "@/lib/trade";

interface DecisionRule {
  readonly name: string;
  /** How a gauge reading near a limit was decided. */
  readonly words: string;
  readonly source: Source;
}

/** By the value of the setting "gauges", which a verdict carries as it was applied. */
const rules: Readonly<Record<string, DecisionRule>> = {
  "as-read": {
    name: "Simple acceptance",
    words:
      "a gauge reading decides as it stands, a figure off a photo keeps its full U (k = 2) clear of the limit",
    source: cite("jcgm-106", "seen", { clause: "8.2" }),
  },
  guarded: {
    name: "Guarded acceptance",
    words: "a gauge reading and a figure off a photo keep their full U (k = 2) clear of the limit",
    source: cite("jcgm-106", "seen", { clause: "8.3" }),
  },
  "one-sided": {
    name: "Guarded acceptance, one-sided",
    words: "a gauge reading keeps 1.65 times its standard uncertainty u clear of the limit",
    source: cite("iso-14253-1", "memory"),
  },
};

const cited = ({ document, edition, clause }: Source): string =>
  [`${document}${edition ? `:${edition}` : ""}`, clause].filter(Boolean).join(", ");

/**
 * The rule a verdict decided gauge readings by, in words with its reference, from the settings the verdict carries.
 * A rule this version has no words for is named by its value and not explained.
 */
export function decisionRuleText(settings: Readonly<Record<string, string | boolean | number>>): string {
  const value = settings["gauges"];
  if (value === undefined) return "not recorded";
  const rule = Object.hasOwn(rules, String(value)) ? rules[String(value)] : undefined;
  if (!rule) return `“${value}”, a rule this version has no words for`;
  const check = needsCheck(rule.source) ? "; check your copy" : "";
  return `${rule.name}: ${rule.words} (${cited(rule.source)}${check})`;
}
