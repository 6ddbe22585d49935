import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import openapiTS, { astToString } from "openapi-typescript";
import ts from "typescript";

const folder = path.join(import.meta.dirname, "../../.out/api-client");
const program = path.join(folder, "program.ts");

const options: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  lib: ["lib.es2023.d.ts", "lib.dom.d.ts"],
  types: [],
  strict: true,
  noUncheckedIndexedAccess: true,
  exactOptionalPropertyTypes: true,
  skipLibCheck: true,
  noEmit: true,
};
const known = new Map<string, ts.SourceFile | undefined>();
const host = ts.createCompilerHost(options);
const fromDisk = host.getSourceFile.bind(host);
// The libraries are read once, whatever is generated beside them.
host.getSourceFile = (file, ...rest) => {
  if (file.startsWith(folder)) return fromDisk(file, ...rest);
  if (!known.has(file)) known.set(file, fromDisk(file, ...rest));
  return known.get(file);
};

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
  const found = ts.getPreEmitDiagnostics(ts.createProgram([program], options, host));
  return {
    program,
    errors: found.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, " ")),
  };
}
