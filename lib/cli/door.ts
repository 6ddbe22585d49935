import { readFileSync } from "node:fs";
import type { z } from "zod";

export type DoorAnswer<T = unknown> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly lines: readonly string[] };

/** Reads a case from a file or, for "-", from standard input. What is wrong comes back as lines: path, then reason. */
export function readCase<S extends z.ZodType>(path: string, schema: S): DoorAnswer<z.output<S>> {
  let text: string;
  try {
    text = readFileSync(path === "-" ? 0 : path, "utf8");
  } catch {
    return { ok: false, lines: [`${path}: cannot be read`] };
  }
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { ok: false, lines: [`${path}: not JSON (${error instanceof Error ? error.message : "?"})`] };
  }
  const parsed = schema.safeParse(json);
  if (parsed.success) return { ok: true, value: parsed.data };
  return {
    ok: false,
    lines: parsed.error.issues.map((one) => `${one.path.join(".") || "(top)"}: ${one.message}`),
  };
}

/** A command-line door: one flag or one case, JSON out, exit 2 with plain lines when the case is not understood. */
export function runDoor(
  use: string,
  answers: Readonly<Record<string, (() => unknown) | ((path: string) => DoorAnswer)>> & {
    readonly case: (path: string) => DoorAnswer;
  },
): void {
  const [argument, ...rest] = process.argv.slice(2);
  if (argument === undefined || argument === "--help" || rest.length > 0) {
    console.log(use);
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
    for (const line of answer.lines) console.error(line);
    process.exitCode = 2;
  }
}
