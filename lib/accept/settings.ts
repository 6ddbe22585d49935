import { fail, issue, ok, type Result } from "@/lib/base";
import type { Settings } from "./case-context";
import type { AcceptIssue, CriteriaSetting } from "./verdict";

/** Choices that every set leaves open. */
export const commonSettings: readonly CriteriaSetting[] = [
  {
    id: "gauges",
    title: "Gauge readings near a limit",
    choices: [
      { value: "as-read", title: "decide as they stand" },
      { value: "guarded", title: "keep their whole uncertainty clear of the limit" },
      { value: "one-sided", title: "keep 1.65 standard uncertainties clear of the limit" },
    ],
    default: "as-read",
    note: "Simple acceptance (JCGM 106:2012, 8.2), a guard band of U (8.3), or of 1.65 u as ISO 14253-1 has it for one-sided limits. Figures off a photo always keep a band.",
  },
  undecided(
    "unlisted",
    "Marked, but without a rule in this set",
    "No clause gives a limit: a qualified person decides.",
  ),
];

/** What a level or a code leaves to the person responsible: until someone has decided, it stays open. */
export function undecided(id: string, title: string, note: string): CriteriaSetting {
  return {
    id,
    title,
    choices: [
      { value: "undecided", title: "not decided yet" },
      { value: "accepted", title: "accepted for this use" },
      { value: "refused", title: "not accepted for this use" },
    ],
    default: "undecided",
    note,
  };
}

/**
 * The settings as they will be applied: what was given where it is a choice, the default where nothing was given.
 * Keys that are not settings of this set are ignored. Errors: bad-setting with the path.
 */
export function resolveSettings(
  offered: readonly CriteriaSetting[],
  given: Settings,
): Result<Settings, AcceptIssue> {
  const wrong = offered.filter(({ id, choices }) => {
    const value = given[id];
    return value !== undefined && !choices.some((choice) => choice.value === value);
  });
  if (wrong.length > 0)
    return fail(
      ...wrong.map(({ id, choices }) =>
        issue("bad-setting" as const, ["settings", id], {
          given: String(given[id]),
          choices: choices.map(({ value }) => String(value)).join(", "),
        }),
      ),
    );
  return ok(Object.fromEntries(offered.map((setting) => [setting.id, given[setting.id] ?? setting.default])));
}
