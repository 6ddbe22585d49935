/**
 * One JSON in, one JSON out: `diagnose case.json`, `diagnose -` (standard input), `--list` (vocabulary), `--schema`.
 * Exit 0: a diagnosis. Exit 2: the input is not as asked for; every path and reason on standard error.
 */
import { readFileSync } from "node:fs";
import {
  diagnose,
  DiagnoseInputSchema,
  diagnoseJsonSchema,
  diagnoseSentences,
  diagnoseVocabulary,
} from "@/lib/diagnose";

const USE = `use: diagnose case.json   a bead to its causes, as JSON
     diagnose -           the same from standard input
     diagnose --list      readings, imperfections, causes, questions and answers it understands
     diagnose --schema    JSON Schema of the input
     diagnose --help      this
`;

function refuse(lines: readonly string[]): never {
  process.stderr.write(lines.map((line) => `${line}\n`).join(""));
  process.exit(2);
}

const where = (path: readonly (string | number | symbol)[]) =>
  path.length === 0 ? "input" : path.map(String).join(".");

function read(name: string): unknown {
  let text: string;
  try {
    text = readFileSync(name === "-" ? 0 : name, "utf8");
  } catch {
    return refuse([`${name}: cannot be read`]);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    return refuse([`${name}: not JSON: ${error instanceof Error ? error.message : "unreadable"}`]);
  }
}

function run(name: string): string {
  const parsed = DiagnoseInputSchema.safeParse(read(name));
  if (!parsed.success)
    return refuse(parsed.error.issues.map(({ path, message }) => `${where(path)}: ${message}`));
  const result = diagnose(parsed.data);
  if (!result.ok)
    return refuse(
      result.issues.map(({ code, path, data }) => `${where(path)}: ${diagnoseSentences[code](data)}`),
    );
  return JSON.stringify(result.value, null, 2);
}

const flags = ["--list", "--schema", "--help"];
const [argument, ...more] = process.argv.slice(2);
if (argument === undefined || more.length > 0 || argument === "--help") {
  (argument === "--help" ? process.stdout : process.stderr).write(USE);
  process.exit(argument === "--help" ? 0 : 2);
}
if (argument.startsWith("--") && !flags.includes(argument))
  refuse([`${argument}: no such flag`, USE.trimEnd()]);
const answer =
  argument === "--list"
    ? JSON.stringify(diagnoseVocabulary(), null, 2)
    : argument === "--schema"
      ? JSON.stringify(diagnoseJsonSchema(), null, 2)
      : run(argument);
process.stdout.write(`${answer}\n`);
