import type { Issue } from "./issue";

/** What a function returns when the ordinary answer may be "no": never thrown, always something the user can act on. */
export type Result<T, I extends Issue = Issue> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly I[] };

export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function fail<I extends Issue>(
  ...issues: readonly I[]
): { readonly ok: false; readonly issues: readonly I[] } {
  return { ok: false, issues };
}
