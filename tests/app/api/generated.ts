import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import openapiTS, { astToString } from "openapi-typescript";

const folder = path.join(import.meta.dirname, "../../.out/api-client");
const program = path.join(folder, "program.ts");

const tsc = path.join(import.meta.dirname, "../../../node_modules/typescript-7/bin/tsc");
const options =
  "--ignoreConfig --noEmit --strict --skipLibCheck --noUncheckedIndexedAccess --exactOptionalPropertyTypes --target es2022 " +
  "--module esnext --moduleResolution bundler --lib es2023,dom --types null";

/** What the compiler says of the program, without places. */
function complaints(): readonly string[] {
  const args = [tsc, ...options.split(" "), "--pretty", "false", program];
  const { stdout } = spawnSync(process.execPath, args, { cwd: folder, encoding: "utf8" });
  return stdout
    .split("\n")
    .map((line) => /error TS\d+: (.*)$/.exec(line)?.[1])
    .filter((words) => words !== undefined);
}

/**
 * Generates the types of a client from a document, lays the program written against them beside, and says what the
 * compiler finds wrong with the two. The program is at the path that is said.
 */
export async function generateClient(
  document: unknown,
): Promise<{ readonly program: string; readonly errors: readonly string[] }> {
  mkdirSync(folder, { recursive: true });
  // What has a default may be left out of what is sent.
  const types = await openapiTS(JSON.stringify(document), { defaultNonNullable: false, silent: true });
  writeFileSync(path.join(folder, "schema.ts"), astToString(types));
  writeFileSync(program, readFileSync(path.join(import.meta.dirname, "program.txt"), "utf8"));
  return { program, errors: complaints() };
}
