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

/** What a process says and ends with. */
export interface Said {
  readonly code: 0 | 2;
  readonly out: string;
  readonly err: string;
}

/** What a command-line door says to the words behind its name: to one flag or one case. */
export function answerWords<D extends Door>(
  door: D,
  use: string,
  words: readonly string[],
  aside: (value: DoorValue[D]) => readonly string[] = () => [],
): Said {
  const [argument, ...rest] = words;
  if (argument === "--help") return { code: 0, out: `${use}\n`, err: "" };
  if (argument === undefined || rest.length > 0) return refused([use]);
  if (argument === "--list") return printed(caseVocabulary(door));
  if (argument === "--schema") return printed(caseJsonSchema(door));
  if (argument.startsWith("--")) return refused([`${argument}: no such flag`, "", use]);
  const answer = answerFile(door, argument);
  return answer.ok ? printed(answer.value, aside(answer.value)) : refused(answer.lines);
}

/**
 * A command-line door: one flag or one case, JSON out, exit 2 with plain lines when the case is not understood.
 *
 * @param aside What to say beside an answer, line by line.
 */
export function runDoor<D extends Door>(
  door: D,
  use: string,
  aside?: (value: DoorValue[D]) => readonly string[],
): void {
  // Whoever reads only the first lines (`| head`) closes the pipe: nothing went wrong.
  process.stdout.on("error", ({ code }: NodeJS.ErrnoException) => process.exit(code === "EPIPE" ? 0 : 1));
  const { code, out, err } = answerWords(door, use, process.argv.slice(2), aside);
  process.stderr.write(err);
  process.stdout.write(out);
  process.exitCode = code;
}

const lines = (list: readonly string[]): string => list.map((line) => `${line}\n`).join("");

function printed(value: unknown, aside: readonly string[] = []): Said {
  return { code: 0, out: `${JSON.stringify(value, null, 2)}\n`, err: lines(aside) };
}

function refused(list: readonly string[]): Said {
  return { code: 2, out: "", err: lines(list) };
}
