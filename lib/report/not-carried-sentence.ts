import type { NotCarried } from "@/lib/accept";

/** What the shop's own limits left of the code they started from, in one line; empty where nothing is known of. */
export function notCarriedSentence(notCarried: NotCarried | null): string {
  if (notCarried === null || notCarried.clauses.length === 0) return "";
  const { clauses, from } = notCarried;
  // "Table 1, 1.20": a table that all of them stand in is said once.
  const [table = ""] = /^[^,]+, /.exec(clauses[0]?.clause ?? "") ?? [];
  const shared = clauses.every(({ clause }) => clause.startsWith(table)) ? table : "";
  const named = clauses.map(({ clause, title }) => `${clause.slice(shared.length)} ${title}`);
  return `Not looked at here: ${named.join("; ")} (of ${from}${shared && `, ${shared.slice(0, -2)}`}).`;
}
