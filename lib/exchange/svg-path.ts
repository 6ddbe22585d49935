import { fail, issue, ok, type Result } from "@/lib/base";
import type { ExchangeIssue } from "./issue";
import { readNumbers } from "./svg-numbers";

export interface StraightPath {
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly closed: boolean;
}

const arity: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, Z: 0 };

/**
 * The corners of an SVG path of one piece made of straight lines (M, L, H, V, Z, absolute or relative). Curves and
 * several pieces: `svg-shape`. Not path data: `svg-unreadable`.
 */
export function pathPoints(d: string): Result<StraightPath, ExchangeIssue> {
  const commands = [...d.matchAll(/([A-DF-Za-df-z])([^A-DF-Za-df-z]*)/g)];
  const prelude = d.slice(0, commands[0]?.index ?? d.length);
  if (prelude.trim() !== "") return unreadable();
  const points: { x: number; y: number }[] = [];
  let at = { x: 0, y: 0 };
  for (const [i, [, letter = "", rest = ""]] of commands.entries()) {
    const kind = letter.toUpperCase();
    const size = arity[kind];
    if (size === undefined) return fail(issue("svg-shape", [], { what: "a curve" }));
    if ((kind === "M") !== (i === 0)) return fail(issue("svg-shape", [], { what: "a path in pieces" }));
    const numbers = readNumbers(rest);
    if (!numbers || (size === 0 ? numbers.length > 0 : numbers.length === 0 || numbers.length % size > 0))
      return unreadable();
    if (size === 0) {
      const last = i === commands.length - 1;
      return last ? ok({ points, closed: true }) : fail(issue("svg-shape", [], { what: "a path in pieces" }));
    }
    const relative = letter !== kind;
    for (let n = 0; n < numbers.length; n += size) {
      at = step(kind, relative, at, numbers[n] ?? 0, numbers[n + 1] ?? 0);
      points.push(at);
    }
  }
  return ok({ points, closed: false });
}

const unreadable = () => fail(issue("svg-unreadable" as const, [], { problem: "path data" }));

function step(
  kind: string,
  relative: boolean,
  at: { readonly x: number; readonly y: number },
  a: number,
  b: number,
): { x: number; y: number } {
  const from = relative ? at : { x: 0, y: 0 };
  if (kind === "H") return { x: from.x + a, y: at.y };
  if (kind === "V") return { x: at.x, y: from.y + a };
  return { x: from.x + a, y: from.y + b };
}
