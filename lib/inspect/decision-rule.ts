import { needsCheck, type Source } from "@/lib/base";

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
    source: { document: "JCGM 106", edition: "2012", clause: "8.2", confidence: "seen" },
  },
  guarded: {
    name: "Guarded acceptance",
    words: "a gauge reading and a figure off a photo keep their full U (k = 2) clear of the limit",
    source: { document: "JCGM 106", edition: "2012", clause: "8.3", confidence: "seen" },
  },
  "one-sided": {
    name: "Guarded acceptance, one-sided",
    words: "a gauge reading keeps 1.65 times its standard uncertainty u clear of the limit",
    source: { document: "ISO 14253-1", edition: "2017", confidence: "memory" },
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
