import { ok, type Result } from "@/lib/base";
import type { UnitsIssue } from "./issue";

/** An empty field means "not known": null, which is no value and no error. Anything else goes to `parse`. */
export function parseOrUnknown(
  typed: string,
  parse: (typed: string) => Result<number, UnitsIssue>,
): Result<number | null, UnitsIssue> {
  return typed.trim() === "" ? ok(null) : parse(typed);
}
