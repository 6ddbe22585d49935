import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("..", import.meta.url));

interface Room {
  readonly name: string;
  readonly floor: number;
  readonly mayImport: ReadonlySet<string> | "any";
}

/** The tables are written once, in DEVELOPERS.md, and read from there, so that plan and check cannot part. */
const sectionOf = (heading: string): string =>
  readFileSync(path.join(root, "DEVELOPERS.md"), "utf8").split(`## ${heading}\n`)[1]?.split("\n## ")[0] ?? "";

function readTable(): Map<string, Room> {
  const section = sectionOf("Who may import whom");
  const rooms = new Map<string, Room>();
  for (const [, name = "", floor = "", list = ""] of section.matchAll(
    /^\| *([a-z-]+) *\| *(\d) *\| *(.+?) *\|$/gm,
  )) {
    const mayImport = list === "any" ? "any" : new Set(list === "nothing" ? [] : list.split(", "));
    rooms.set(name, { name, floor: Number(floor), mayImport });
  }
  return rooms;
}

/** Folders of components and what each may import of the others: name, what it holds, its list. */
function readFolders(): Map<string, ReadonlySet<string>> {
  const rows = sectionOf("Folders of components").matchAll(/^\| *([a-z-]+) *\|[^|]+\| *([a-z, -]+?) *\|$/gm);
  return new Map(
    [...rows]
      .filter(([, name]) => name !== "folder" && !/^-+$/.test(name ?? ""))
      .map(([, name = "", list = ""]) => [name, new Set(list === "nothing" ? [] : list.split(", "))]),
  );
}

function sourceFiles(folder: string): string[] {
  return readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const inside = path.join(folder, entry.name);
    if (entry.isDirectory()) return sourceFiles(inside);
    return /\.(ts|tsx)$/.test(entry.name) && !entry.name.endsWith(".d.ts") ? [inside] : [];
  });
}

interface Import {
  readonly specifier: string;
  readonly line: number;
}

const importsKnown = new Map<string, readonly Import[]>();
/** The imports of a file of the house, read once however many rules ask. */
function importsIn(file: string): readonly Import[] {
  const known = importsKnown.get(file) ?? importsOf(textOf(file), file);
  importsKnown.set(file, known);
  return known;
}
const textOf = (file: string): string => readFileSync(path.join(root, file), "utf8");

function importsOf(text: string, file: string): Import[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);
  const found: Import[] = [];
  // Below the statements of a file only import(…) names another file, as a call or as a type.
  const isDeep = /\bimport\s*\(/.test(text);
  const visit = (node: ts.Node): void => {
    const target =
      ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
        ? node.moduleSpecifier
        : ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword
          ? node.arguments[0]
          : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
            ? node.argument.literal
            : undefined;
    if (target && ts.isStringLiteralLike(target)) {
      found.push({
        specifier: target.text,
        line: source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1,
      });
    }
    if (isDeep) ts.forEachChild(node, visit);
  };
  source.statements.forEach(visit);
  return found;
}

/** The room of a path relative to the root, and whether it names the room's door. */
function roomOf(relative: string): { room: string; isDoor: boolean } | null {
  const [first = "", second = "", ...rest] = relative.split("/");
  if (first === "lib")
    return { room: second, isDoor: rest.length === 0 || (rest.length === 1 && rest[0] === "index") };
  if (["app", "components", "demo-images", "prisma", "tests"].includes(first))
    return { room: first, isDoor: true };
  return null;
}

function resolve(file: string, specifier: string): string | null {
  if (specifier.startsWith("@/")) return specifier.slice(2).replace(/\.(ts|tsx)$/, "");
  if (specifier.startsWith(".")) return path.join(path.dirname(file), specifier).replace(/\.(ts|tsx)$/, "");
  return null;
}

const table = readTable();
const files = ["lib", "app", "components", "demo-images"].flatMap(sourceFiles);

/** What is wrong with one import, in a sentence, or null. Exported rules are few enough to read at a glance. */
function complaint(file: string, specifier: string): string | null {
  const own = roomOf(file)?.room ?? "";
  const target = resolve(file, specifier);
  if (target === null) return null;
  const other = roomOf(target);
  if (other === null) return `${specifier} leads out of the house`;
  if (other.room === own) return null;
  if (other.room === "prisma")
    return own === "db" ? null : "only lib/db may import the generated Prisma client";
  if (other.room === "tests") return "nothing imports tests";
  if (!other.isDoor) return `${specifier} goes past the door of ${other.room}`;
  const room = table.get(own);
  if (!room) return `${own} is not in the import table of DEVELOPERS.md`;
  if (room.mayImport !== "any" && !room.mayImport.has(other.room))
    return `${own} may not import ${other.room}`;
  return null;
}

/** Which of its permissions a row does not use. */
function unused({ name, mayImport }: Room, used: ReadonlySet<string>): string[] {
  if (mayImport === "any") return [];
  return [...mayImport]
    .filter((other) => !used.has(`${name} -> ${other}`))
    .map((other) => `${name} -> ${other}`);
}

/** Every import from one room into another, as "room -> other", types included. */
function importsBetweenRooms(): ReadonlySet<string> {
  const pairs = files.flatMap((file) =>
    importsIn(file).map(({ specifier }) => {
      const target = resolve(file, specifier);
      return `${roomOf(file)?.room} -> ${target === null ? null : roomOf(target)?.room}`;
    }),
  );
  return new Set(pairs);
}

const folders = readFolders();
const folderOf = (relative: string): string | null =>
  /^components\/([^/]+)(?:\/|$)/.exec(relative)?.[1] ?? null;

/** What is wrong with an import of a folder of components, in a sentence, or null. */
function folderComplaint(file: string, specifier: string): string | null {
  const target = resolve(file, specifier);
  const other = target && folderOf(target);
  const own = folderOf(file);
  if (!target || !other || other === own) return null;
  if (target !== `components/${other}`) return `${specifier} goes past the door of components/${other}`;
  if (own !== null && !folders.get(own)?.has(other))
    return `components/${own} may not import components/${other}`;
  return null;
}

/** Hooks that React has in the browser only: a file that uses one must say so, or a page that reaches it breaks. */
const browserHooks =
  /^use(State|Reducer|Ref|Effect|LayoutEffect|EffectEvent|Context|Transition|ActionState|Optimistic|DeferredValue|SyncExternalStore)$/;

function saysClient(text: string): boolean {
  return /^\s*"use client"/.test(text);
}

function usesBrowserHooks(file: string, text: string): boolean {
  if (!text.includes('"react"')) return false;
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  return source.statements.some(
    (statement) =>
      ts.isImportDeclaration(statement) &&
      statement.moduleSpecifier.getText() === '"react"' &&
      statement.importClause?.namedBindings !== undefined &&
      ts.isNamedImports(statement.importClause.namedBindings) &&
      statement.importClause.namedBindings.elements.some(({ name }) => browserHooks.test(name.text)),
  );
}

/** Purity in names: comments and strings are not read, only identifiers used as values. */
const forbiddenNames = new Set([
  "process",
  "fetch",
  "console",
  "setTimeout",
  "setInterval",
  "localStorage",
  "window",
  "document",
  "Date",
]);
const someForbiddenName = new RegExp(`\\b(${[...forbiddenNames, "Math"].join("|")})\\b`);
const forbiddenPackages = /^(node:|fs$|path$|react|konva|react-konva|next|@prisma|sharp|better-sqlite3)/;

function impurities(file: string, text: string): string[] {
  if (!someForbiddenName.test(text)) return [];
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  // A room may call a process window `window`: a name the file declares itself is its own.
  const declared = declaredNames(source);
  const visit = (node: ts.Node): void => {
    if (
      ts.isIdentifier(node) &&
      forbiddenNames.has(node.text) &&
      !declared.has(node.text) &&
      isFreeValue(node)
    )
      found.push(node.text);
    if (ts.isPropertyAccessExpression(node) && node.getText() === "Math.random") found.push("Math.random");
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function declaredNames(source: ts.SourceFile): ReadonlySet<string> {
  const names = new Set<string>();
  const visit = (node: ts.Node): void => {
    const declares = ts.isParameter(node) || ts.isVariableDeclaration(node) || ts.isBindingElement(node);
    if (declares && ts.isIdentifier(node.name)) names.add(node.name.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return names;
}

function isFreeValue(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isNewExpression(parent) || ts.isCallExpression(parent)) return parent.expression === node;
  return false;
}

describe("the import table of DEVELOPERS.md", () => {
  it("is found, and names every room there is", () => {
    expect(table.size).toBeGreaterThan(15);
    const rooms = readdirSync(path.join(root, "lib")).filter((name) => sourceFiles(`lib/${name}`).length > 0);
    expect(rooms.filter((name) => !table.has(name))).toEqual([]);
    const places = [...rooms, "app", "components", "demo-images"];
    expect([...table.keys()].filter((name) => !places.includes(name))).toEqual([]);
  });

  it("says of each room what it holds", () => {
    const text = readFileSync(path.join(root, "DEVELOPERS.md"), "utf8");
    const section = text.split("## What each room holds")[1]?.split("\n## ")[0] ?? "";
    const told = new Set([...section.matchAll(/^\| *([a-z][a-z-]*) *\|/gm)].map(([, name]) => name));
    const rooms = readdirSync(path.join(root, "lib")).filter((name) => sourceFiles(`lib/${name}`).length > 0);
    expect(rooms.filter((name) => !told.has(name))).toEqual([]);
    expect([...told].filter((name) => name !== "room" && !rooms.includes(name ?? ""))).toEqual([]);
  });

  it("points downwards only", () => {
    const upward = [...table.values()].flatMap((room) =>
      room.mayImport === "any"
        ? []
        : [...room.mayImport]
            .filter((name) => (table.get(name)?.floor ?? 9) > room.floor)
            .map((name) => `${room.name} -> ${name}`),
    );
    expect(upward).toEqual([]);
  });

  it("has no circle", () => {
    const reach = (name: string, seen: readonly string[]): string[] => {
      if (seen.includes(name)) return [[...seen, name].join(" -> ")];
      const next = table.get(name)?.mayImport;
      return next === undefined || next === "any"
        ? []
        : [...next].flatMap((other) => reach(other, [...seen, name]));
    };
    expect([...table.keys()].flatMap((name) => reach(name, []))).toEqual([]);
  });

  it("has no circle of files either, types included", () => {
    const known = new Set(files);
    const graph = new Map(
      files.map((file) => [
        file,
        importsIn(file).flatMap(({ specifier }) => {
          const target = resolve(file, specifier);
          const found = [`${target}.ts`, `${target}.tsx`, `${target}/index.ts`].find((one) => known.has(one));
          return found === undefined ? [] : [found];
        }),
      ]),
    );
    // Files that lead nowhere but to files already taken away go first; what is left runs in a circle.
    const left = new Set(files);
    for (let before = -1; before !== left.size;) {
      before = left.size;
      for (const file of left) if (!graph.get(file)!.some((next) => left.has(next))) left.delete(file);
    }
    const leadsBack = (file: string): boolean => graph.get(file)!.some((next) => left.has(next));
    expect([...left].filter(leadsBack)).toEqual([]);
  });

  it("is kept by every import, types included", () => {
    const broken = files.flatMap((file) =>
      importsIn(file).flatMap(({ specifier, line }) => {
        const wrong = complaint(file, specifier);
        return wrong ? [`${file}:${line} ${wrong}`] : [];
      }),
    );
    expect(broken).toEqual([]);
  });

  it("permits nothing that nobody does", () => {
    const used = importsBetweenRooms();
    expect([...table.values()].flatMap((room) => unused(room, used))).toEqual([]);
  });

  it("would notice a permission that nobody uses", () => {
    const strip: Room = { name: "strip", floor: 2, mayImport: new Set(["base", "db"]) };
    expect(unused(strip, importsBetweenRooms())).toEqual(["strip -> db"]);
  });

  it("would notice a broken import", () => {
    expect(complaint("lib/base/issue.ts", "@/lib/marks")).toBe("base may not import marks");
    expect(complaint("lib/measure/x.ts", "@/lib/marks/drawing")).toContain("past the door");
    expect(complaint("components/bead/x.tsx", "@/lib/db")).toBe("components may not import db");
    expect(complaint("lib/store/x.ts", "@/prisma/generated/client")).toContain("only lib/db");
    expect(importsOf('import type { A } from "@/lib/db";', "x.ts")).toHaveLength(1);
    expect(importsOf('const late = () => import("@/lib/db");', "x.ts")).toHaveLength(1);
  });
});

describe("the folders of components", () => {
  const inComponents = files.filter((file) => file.startsWith("components/"));
  const imports = [...inComponents, ...files.filter((file) => file.startsWith("app/"))].flatMap((file) =>
    importsIn(file).map((one) => ({ ...one, file })),
  );

  it("are all in their table, and nothing else is", () => {
    const there = readdirSync(path.join(root, "components"));
    expect([...folders.keys()].sort()).toEqual(there.sort());
  });

  it("have a door each, written by hand", () => {
    const doors = [...folders.keys()].map((name) => textOf(`components/${name}/index.ts`));
    expect(doors.filter((text) => /export \*|"use client"/.test(text))).toEqual([]);
  });

  it("run in no circle", () => {
    const left = new Map(folders);
    for (let before = -1; before !== left.size;) {
      before = left.size;
      for (const [name, list] of left) if (![...list].some((other) => left.has(other))) left.delete(name);
    }
    expect([...left.keys()]).toEqual([]);
  });

  it("are entered by their doors, by whom the table lets in", () => {
    const broken = imports.flatMap(({ file, specifier, line }) => {
      const wrong = folderComplaint(file, specifier);
      return wrong ? [`${file}:${line} ${wrong}`] : [];
    });
    expect(broken).toEqual([]);
  });

  it("use every permission they have", () => {
    const used = new Set(
      imports.map(
        ({ file, specifier }) => `${folderOf(file)} -> ${folderOf(resolve(file, specifier) ?? "")}`,
      ),
    );
    const given = [...folders].flatMap(([name, list]) => [...list].map((other) => `${name} -> ${other}`));
    expect(given.filter((one) => !used.has(one))).toEqual([]);
  });

  it("say where they need the browser", () => {
    const silent = inComponents.filter(
      (file) => usesBrowserHooks(file, textOf(file)) && !saysClient(textOf(file)),
    );
    expect(silent).toEqual([]);
  });

  it("offer at their doors only what somebody outside takes", () => {
    const namesOf = (clause: ts.NamedImports | ts.NamedExports): readonly string[] =>
      clause.elements.map(
        (one) => (ts.isImportSpecifier(one) && one.propertyName ? one.propertyName : one.name).text,
      );
    const treeOf = (file: string): ts.SourceFile =>
      ts.createSourceFile(file, textOf(file), ts.ScriptTarget.Latest, true);
    // What names no folder of components takes nothing from one; a component may name one as its neighbour.
    const mayTake = (file: string): boolean =>
      file.startsWith("components/") || textOf(file).includes("components/");
    const taken = new Set(
      [...files, ...sourceFiles("tests")].filter(mayTake).flatMap((file) =>
        treeOf(file).statements.flatMap((statement): readonly string[] => {
          if (!ts.isImportDeclaration(statement) || !ts.isStringLiteral(statement.moduleSpecifier)) return [];
          const folder = folderOf(resolve(file, statement.moduleSpecifier.text) ?? "");
          const named = statement.importClause?.namedBindings;
          if (folder === null || folder === folderOf(file) || !named || !ts.isNamedImports(named)) return [];
          return namesOf(named).map((name) => `${folder} ${name}`);
        }),
      ),
    );
    const offered = [...folders.keys()].flatMap((folder) =>
      treeOf(`components/${folder}/index.ts`).statements.flatMap((statement): readonly string[] =>
        ts.isExportDeclaration(statement) &&
        statement.exportClause &&
        ts.isNamedExports(statement.exportClause)
          ? namesOf(statement.exportClause).map((name) => `${folder} ${name}`)
          : [],
      ),
    );
    expect(offered.length).toBeGreaterThan(70);
    expect(offered.filter((one) => !taken.has(one))).toEqual([]);
  });

  it("cost a page only what it shows", () => {
    // The bundler drops what a door offers and nobody takes, as long as loading a file does nothing by itself.
    const { sideEffects } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8"));
    expect(sideEffects).toEqual(["*.css"]);
    const bare = files
      .filter((file) => /^(app|components|lib)\//.test(file))
      .flatMap((file) => [...textOf(file).matchAll(/^import "([^"]+)";/gm)].map(([, name = ""]) => name));
    expect(bare.filter((name) => !name.endsWith(".css") && name !== "server-only")).toEqual([]);
  });

  it("would notice each of these", () => {
    expect(folderComplaint("components/layer/x.tsx", "@/components/canvas")).toContain("may not import");
    expect(folderComplaint("components/layer/x.tsx", "../canvas-kit/view")).toContain("past the door");
    expect(folderComplaint("app/x/page.tsx", "@/components/ui/page.module.css")).toContain("past the door");
    expect(folderComplaint("app/x/page.tsx", "@/components/ui")).toBeNull();
    const hook = 'import { useState, type ReactNode } from "react";';
    expect(usesBrowserHooks("x.tsx", hook) && !saysClient(hook)).toBe(true);
    expect(usesBrowserHooks("x.tsx", 'import { useId } from "react";')).toBe(false);
  });
});

describe("pure rooms", () => {
  const pure = [...table.values()].filter((room) => room.floor <= 3).map((room) => `lib/${room.name}/`);
  const pureFiles = files.filter((file) => pure.some((prefix) => file.startsWith(prefix)));

  it("name no clock, chance, file, network or framework", () => {
    const found = pureFiles.flatMap((file) => {
      const packages = importsIn(file).filter(({ specifier }) => forbiddenPackages.test(specifier));
      return [...impurities(file, textOf(file)), ...packages.map(({ specifier }) => specifier)].map(
        (name) => `${file}: ${name}`,
      );
    });
    expect(found).toEqual([]);
  });

  it("would be caught naming one", () => {
    expect(
      impurities("x.ts", "const a = Math.random(); const b = new Date(); console.log(process.env)"),
    ).toEqual(["Math.random", "Date", "console", "process"]);
    expect(impurities("x.ts", "const a = { process: 1 }; a.process")).toEqual([]);
    expect(impurities("x.ts", "const f = (window: { low: number }) => window.low")).toEqual([]);
    expect(impurities("x.ts", "window.close()")).toEqual(["window"]);
  });
});

/** What a text imports by name through a door, types left out. */
function namesFrom(door: string, text: string): string[] {
  const [, list = ""] = new RegExp(`import \\{([^}]*)\\} from "${door}"`).exec(text) ?? [];
  return list.split(",").map((name) => name.trim());
}

/** Who takes a name through a door: rooms, sorted. */
function takersOf(name: string, door: string): string[] {
  const takers = files.filter((file) => namesFrom(door, textOf(file)).includes(name));
  return [...new Set(takers.map((file) => roomOf(file)?.room ?? ""))].toSorted();
}

/** Points and maps that a text speaks of without saying which plane is theirs. */
function spacelessTypes(file: string, text: string): string[] {
  if (!/\b(Point|Homography|Ellipse|FittedLine|AnySpace)\b/.test(text)) return [];
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const spaced = new Set(["Point", "Homography", "Ellipse", "FittedLine", "AnySpace"]);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeReferenceNode(node) && spaced.has(node.typeName.getText()) && !node.typeArguments)
      found.push(node.typeName.getText());
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

describe("points and maps in lib", () => {
  /** Geometry works in any plane, and what is thinned out is thinned in its own. */
  const anyPlane = ["lib/geometry/", "lib/marks/simplify-path.ts"];

  it("say which plane is theirs", () => {
    const silent = files
      .filter((file) => file.startsWith("lib/") && !anyPlane.some((start) => file.startsWith(start)))
      .flatMap((file) => spacelessTypes(file, textOf(file)).map((name) => `${file}: ${name}`));
    expect(silent).toEqual([]);
  });

  it("would be caught saying nothing", () => {
    expect(
      spacelessTypes("x.ts", "let a: readonly Point[]; let b: Homography<A, B>; let c: Point<A>;"),
    ).toEqual(["Point"]);
  });
});

describe("what is worked out once", () => {
  it("a bead is assessed by whoever answers for it, and by no room that words, counts or signs", () => {
    const assessing = ["assess", "assessBead"].flatMap((name) => takersOf(name, "@/lib/assess"));
    expect(assessing).toContain("app");
    expect(assessing.filter((name) => (table.get(name)?.floor ?? 0) <= 3)).toEqual([]);
  });

  it("a photo is calibrated where its bead is assessed, and nowhere else", () => {
    expect(takersOf("calibrate", "@/lib/measure")).toEqual(["assess"]);
  });

  it("would notice another", () => {
    const text = `import {\n  assess,\n  type Assessment,\n} from "@/lib/assess";`;
    expect(namesFrom("@/lib/assess", text)).toContain("assess");
    expect(namesFrom("@/lib/measure", text)).not.toContain("assess");
  });
});

describe("server rooms", () => {
  it("say so at their door", () => {
    const server = [...table.values()].filter((room) => room.floor === 4).map((room) => room.name);
    const silent = server.filter(
      (name) =>
        !readFileSync(path.join(root, "lib", name, "index.ts"), "utf8").includes('import "server-only"'),
    );
    expect(silent).toEqual([]);
  });
});
