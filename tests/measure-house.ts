/**
 * `npm run -s measure-house`: the measures by which this house is compared with others and with itself: lines per file
 * and function, functions over 40 lines, share of comments, circles of imports, names a door offers and nobody takes,
 * names that nothing shipped uses.
 * With a folder, another copy of the house is measured: `npm run -s measure-house -- ../older`.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { deadWood } from "./dead-wood.mjs";

const root = path.resolve(process.argv.slice(2).find((word) => !word.startsWith("--")) ?? ".");
const LONGEST = 40;

interface Source {
  readonly file: string;
  readonly text: string;
  readonly tree: ts.SourceFile;
}

function sourcesIn(folder: string): Source[] {
  if (!existsSync(path.join(root, folder))) return [];
  return readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry): Source[] => {
    const file = path.join(folder, entry.name);
    if (entry.isDirectory()) return sourcesIn(file);
    if (!/\.(ts|tsx)$/.test(entry.name) || entry.name.endsWith(".d.ts")) return [];
    const text = readFileSync(path.join(root, file), "utf8");
    return [{ file, text, tree: ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true) }];
  });
}

const lines = (text: string): number => text.split("\n").length - 1;

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}

interface Measured {
  readonly name: string;
  readonly lines: number;
}

/** Named functions and methods, with the lines they take up. */
function functionsOf({ file, tree }: Source): readonly Measured[] {
  const found: Measured[] = [];
  const lineOf = (position: number): number => tree.getLineAndCharacterOfPosition(position).line;
  const visit = (node: ts.Node): void => {
    const name = nameOf(node);
    if (name !== null)
      found.push({ name: `${file} ${name}`, lines: lineOf(node.getEnd()) - lineOf(node.getStart()) + 1 });
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

function nameOf(node: ts.Node): string | null {
  if (ts.isFunctionDeclaration(node) || ts.isMethodDeclaration(node))
    return node.name?.getText() ?? "default";
  if (!ts.isVariableDeclaration(node) || node.initializer === undefined) return null;
  const isFunction = ts.isArrowFunction(node.initializer) || ts.isFunctionExpression(node.initializer);
  return isFunction ? node.name.getText() : null;
}

function commentShare(sources: readonly Source[]): number {
  const commented = sources.map(({ text }) => {
    let inside = false;
    return text.split("\n").filter((line) => {
      const bare = line.trim();
      const starts = bare.startsWith("/*") || bare.startsWith("{/*");
      const isComment = inside || starts || bare.startsWith("//");
      if (starts) inside = true;
      if (inside && bare.includes("*/")) inside = false;
      return isComment;
    }).length;
  });
  const all = sources.reduce((sum, { text }) => sum + lines(text), 0);
  return commented.reduce((sum, count) => sum + count, 0) / Math.max(1, all);
}

function row(name: string, sources: readonly Source[]): string {
  const files = sources.map(({ text }) => lines(text));
  const functions = sources.flatMap(functionsOf);
  const sizes = functions.map((one) => one.lines);
  const total = files.reduce((sum, count) => sum + count, 0);
  const over = functions.filter((one) => one.lines > LONGEST).length;
  return [
    name.padEnd(38),
    `${(total / 1000).toFixed(1)}k`.padStart(7),
    `${quantile(files, 0.5)}/${quantile(files, 0.9)}`.padStart(9),
    `${quantile(sizes, 0.5)}/${quantile(sizes, 0.9)}`.padStart(10),
    `${over} of ${sizes.length}`.padStart(12),
    String(Math.max(0, ...sizes)).padStart(8),
    `${(100 * commentShare(sources)).toFixed(1)} %`.padStart(9),
  ].join(" ");
}

function targetsOf({ file, tree }: Source, known: ReadonlySet<string>): readonly string[] {
  return tree.statements.flatMap((statement): string[] => {
    const at =
      ts.isImportDeclaration(statement) || ts.isExportDeclaration(statement)
        ? statement.moduleSpecifier
        : undefined;
    if (at === undefined || !ts.isStringLiteral(at)) return [];
    const name = at.text.startsWith("@/")
      ? at.text.slice(2)
      : at.text.startsWith(".")
        ? path.join(path.dirname(file), at.text)
        : null;
    if (name === null) return [];
    const found = [name, `${name}.ts`, `${name}.tsx`, `${name}/index.ts`].find((one) => known.has(one));
    return found === undefined ? [] : [found];
  });
}

/** Groups of files that reach each other (Tarjan 1972), each of more than one. */
function circles(sources: readonly Source[]): readonly (readonly string[])[] {
  const known = new Set(sources.map(({ file }) => file));
  const graph = new Map(sources.map((source) => [source.file, targetsOf(source, known)]));
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const groups: string[][] = [];
  const visit = (file: string): void => {
    index.set(file, index.size);
    low.set(file, index.get(file)!);
    stack.push(file);
    for (const next of graph.get(file) ?? []) {
      if (!index.has(next)) {
        visit(next);
        low.set(file, Math.min(low.get(file)!, low.get(next)!));
      } else if (stack.includes(next)) low.set(file, Math.min(low.get(file)!, index.get(next)!));
    }
    if (low.get(file) !== index.get(file)) return;
    const group = stack.splice(stack.indexOf(file));
    if (group.length > 1) groups.push(group);
  };
  for (const file of graph.keys()) if (!index.has(file)) visit(file);
  return groups;
}

/** Names on the doors of lib's rooms that no other room and no page, and those that not even a test, imports. */
function untaken(sources: readonly Source[], tests: readonly Source[]) {
  const taken = (list: readonly Source[]): Set<string> =>
    new Set(
      list.flatMap(({ file, tree }) =>
        tree.statements.flatMap((statement): string[] => {
          if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier)) return [];
          const door = /^@\/(lib\/[^/]+)$/.exec(statement.moduleSpecifier.text)?.[1];
          const named = statement.importClause?.namedBindings;
          if (door === undefined || named === undefined || !ts.isNamedImports(named)) return [];
          if (file.startsWith(`${door}/`)) return [];
          return named.elements.map((one) => `${door} ${(one.propertyName ?? one.name).text}`);
        }),
      ),
    );
  const offered = sources
    .filter(({ file }) => /^lib\/[^/]+\/index\.ts$/.test(file))
    .flatMap(({ file, tree }) =>
      tree.statements.flatMap((statement): string[] =>
        ts.isExportDeclaration(statement) &&
        statement.exportClause &&
        ts.isNamedExports(statement.exportClause)
          ? statement.exportClause.elements.map((one) => `${path.dirname(file)} ${one.name.text}`)
          : [],
      ),
    );
  const byHouse = taken(sources);
  const byTests = taken(tests);
  return {
    offered: offered.length,
    byTestsAlone: offered.filter((name) => !byHouse.has(name) && byTests.has(name)),
    byNobody: offered.filter((name) => !byHouse.has(name) && !byTests.has(name)),
  };
}

const house = ["lib", "app", "components", "demo-images"].flatMap(sourcesIn);
const tests = sourcesIn("tests");
const serverRooms =
  /^lib\/(db|photo|pdf|account|store|roster|shop|beads|classroom|jobs|find|archive|verify|demo|cli)\//;
const isTable = (file: string): boolean => file.includes("/tables/");
const pick = (test: (file: string) => boolean): readonly Source[] => house.filter(({ file }) => test(file));

console.log(
  `${"".padEnd(38)} ${"lines".padStart(7)} ${"file".padStart(9)} ${"function".padStart(10)} ${`over ${LONGEST}`.padStart(12)} ${"longest".padStart(8)} ${"comments".padStart(9)}`,
);
console.log(
  row(
    "pure rooms without tables",
    pick((file) => file.startsWith("lib/") && !serverRooms.test(file) && !isTable(file)),
  ),
);
console.log(
  row(
    "server rooms",
    pick((file) => serverRooms.test(file)),
  ),
);
console.log(
  row(
    "components",
    pick((file) => file.startsWith("components/")),
  ),
);
console.log(
  row(
    "app",
    pick((file) => file.startsWith("app/")),
  ),
);
console.log(
  row(
    "demo-images",
    pick((file) => file.startsWith("demo-images/")),
  ),
);
console.log(row("tests", tests));
console.log("(file and function: median and 90th percentile of lines)\n");

const rings = circles(house);
console.log(`circles of files: ${rings.length}`);
for (const ring of rings) console.log(`  ${ring.join(" <-> ")}`);
const doors = untaken(house, tests);
console.log(
  `\nnames on doors: ${doors.offered}; taken by tests alone: ${doors.byTestsAlone.length}; by nobody: ${doors.byNobody.length}`,
);
if (process.argv.includes("--names"))
  for (const name of [...doors.byTestsAlone.map((one) => `tests ${one}`), ...doors.byNobody])
    console.log(`  ${name}`);
const dead = await deadWood(root);
const awaited = house.flatMap(({ file, text }) => (/@awaited/.test(text) ? [file] : []));
console.log(
  dead === null
    ? "dead names, files and packages: not configured here"
    : `dead names, files and packages: ${dead.length}; awaited by a screen: ${awaited.length} (${awaited.join(", ")})`,
);
for (const one of dead ?? []) console.log(`  ${one}`);
const long = house.flatMap(functionsOf).filter((one) => one.lines > LONGEST);
console.log(`\nfunctions over ${LONGEST} lines: ${long.length}`);
if (process.argv.includes("--long"))
  for (const one of long.sort((a, b) => b.lines - a.lines)) console.log(`  ${one.lines} ${one.name}`);
