import { readFileSync } from "node:fs";
import {
  answerCase,
  caseJsonSchema,
  caseVocabulary,
  readCaseText,
  type CaseAnswer,
  type Door,
  type DoorValue,
} from "@/lib/case";

/** Answers the case in a file or, for "-", on standard input. What is wrong comes back as lines. */
export function answerFile<D extends Door>(door: D, path: string): CaseAnswer<DoorValue[D]> {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path === "-" ? 0 : path);
  } catch {
    return { ok: false, lines: [`${path}: cannot be read`] };
  }
  const read = readCaseText(bytes);
  return read.ok ? answerCase(door, read.value) : read;
}

/**
 * A command-line door: one flag or one case, JSON out, exit 2 with plain lines when the case is not understood.
 *
 * @param aside What to say beside an answer, line by line.
 */
export function runDoor<D extends Door>(
  door: D,
  use: string,
  aside: (value: DoorValue[D]) => readonly string[] = () => [],
): void {
  // Whoever reads only the first lines (`| head`) closes the pipe: nothing went wrong.
  process.stdout.on("error", ({ code }: NodeJS.ErrnoException) => process.exit(code === "EPIPE" ? 0 : 1));
  const [argument, ...rest] = process.argv.slice(2);
  if (argument === "--help") console.log(use);
  else if (argument === undefined || rest.length > 0) refuse([use]);
  else if (argument === "--list") print(caseVocabulary(door));
  else if (argument === "--schema") print(caseJsonSchema(door));
  else if (argument.startsWith("--")) refuse([`${argument}: no such flag`, "", use]);
  else {
    const answer = answerFile(door, argument);
    if (!answer.ok) return refuse(answer.lines);
    for (const line of aside(answer.value)) console.error(line);
    print(answer.value);
  }
}

function print(value: unknown): void {
  console.log(JSON.stringify(value, null, 2));
}

function refuse(lines: readonly string[]): void {
  for (const line of lines) console.error(line);
  process.exitCode = 2;
}
