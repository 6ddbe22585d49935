import { readFileSync } from "node:fs";
import { z } from "zod";
import { unknownKeys } from "./unknown-keys";

export type DoorAnswer<T = unknown> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly lines: readonly string[] };

/** More lines than this help nobody: the first of them are put right first. */
const MOST_LINES = 12;

/**
 * Reads a case from a file or, for "-", from standard input. What is wrong comes back as lines: path, then reason.
 * A name that the schema does not know is wrong too, unless it is among `alsoAllowed`.
 */
export function readCase<S extends z.ZodType>(
  path: string,
  schema: S,
  alsoAllowed: readonly string[] = [],
): DoorAnswer<z.output<S>> {
  const json = readJson(path);
  if (!json.ok) return json;
  const parsed = schema.safeParse(json.value);
  if (!parsed.success) return { ok: false, lines: parsed.error.issues.map((one) => issueLine(one)) };
  const shape = z.toJSONSchema(schema, { io: "input" }) as Record<string, unknown>;
  const unknown = unknownKeys(json.value, shape, alsoAllowed);
  return unknown.length > 0 ? { ok: false, lines: unknown } : { ok: true, value: parsed.data };
}

function readJson(path: string): DoorAnswer {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path === "-" ? 0 : path);
  } catch {
    return { ok: false, lines: [`${path}: cannot be read`] };
  }
  // Two-byte text shows its mark, or a zero in every other byte of plain letters.
  if (bytes[0] === 0xff || bytes[0] === 0xfe || bytes.subarray(0, 4).includes(0))
    return { ok: false, lines: [`${path}: not UTF-8 text. Save the case as UTF-8.`] };
  const text = bytes.toString("utf8").replace(/^\uFEFF/, "");
  if (text.trim() === "") return { ok: false, lines: [`${path}: not JSON (it is empty)`] };
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    return { ok: false, lines: [`${path}: not JSON (${error instanceof Error ? error.message : "?"})`] };
  }
}

type ZodIssue = z.core.$ZodIssue;

/** One issue as "path: reason". Of a choice of shapes, the reason of the one that came nearest. */
function issueLine(issue: ZodIssue, before: readonly PropertyKey[] = []): string {
  const path = [...before, ...issue.path];
  if (issue.code === "invalid_union" && issue.errors.length > 0) {
    const depth = (list: readonly ZodIssue[]): number => Math.max(0, ...list.map((one) => one.path.length));
    const nearest = [...issue.errors].sort((a, b) => depth(b) - depth(a))[0]!;
    if (depth(nearest) > 0 && nearest[0] !== undefined) return issueLine(nearest[0], path);
    const reasons = new Set(issue.errors.flatMap(([first]) => (first === undefined ? [] : [first.message])));
    return `${where(path)}: ${[...reasons].join("; or: ")}`;
  }
  return `${where(path)}: ${issue.message}`;
}

function where(path: readonly PropertyKey[]): string {
  return path.map(String).join(".") || "(top)";
}

/** A command-line door: one flag or one case, JSON out, exit 2 with plain lines when the case is not understood. */
export function runDoor(
  use: string,
  answers: Readonly<Record<string, (() => unknown) | ((path: string) => DoorAnswer)>> & {
    readonly case: (path: string) => DoorAnswer;
  },
): void {
  // Whoever reads only the first lines (`| head`) closes the pipe: nothing went wrong.
  process.stdout.on("error", ({ code }: NodeJS.ErrnoException) => process.exit(code === "EPIPE" ? 0 : 1));
  const [argument, ...rest] = process.argv.slice(2);
  if (argument === undefined || argument === "--help" || rest.length > 0) {
    (argument === "--help" ? console.log : console.error)(use);
    process.exitCode = argument === "--help" ? 0 : 2;
    return;
  }
  const flag = argument.startsWith("--") ? answers[argument] : undefined;
  if (argument.startsWith("--") && flag === undefined) {
    console.error(`${argument}: no such flag\n\n${use}`);
    process.exitCode = 2;
    return;
  }
  const answer: DoorAnswer = flag ? { ok: true, value: (flag as () => unknown)() } : answers.case(argument);
  if (answer.ok) console.log(JSON.stringify(answer.value, null, 2));
  else {
    for (const line of answer.lines.slice(0, MOST_LINES)) console.error(line);
    if (answer.lines.length > MOST_LINES) console.error(`and ${answer.lines.length - MOST_LINES} more`);
    process.exitCode = 2;
  }
}
