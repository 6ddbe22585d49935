import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";

const root = path.join(import.meta.dirname, "..");

/**
 * What a server process keeps from one request to the next, and why nothing of it reaches from one site into another. Whoever
 * keeps something new says so here: a cache without the site in it would answer one school with what is another's.
 */
const kept: Readonly<Record<string, string>> = {
  "lib/photo/in-turn.ts toelineDecoding": "senders are named with their site (ofSite)",
  "app/_door/dear-work.ts toelineDearWork": "senders are named with their site (ofSite)",
  "app/_door/look-turns.ts toelineLookTurns": "senders are named with their site (ofSite)",
  "app/_door/open-exports.ts toelineOpenExports": "senders are named with their site (ofSite)",
  "lib/aside/do-aside.ts toelineAside": "threads, which are told the site of each piece of work",
  "app/api/check/route.ts sending": "senders are named with their site (ofSite)",
  "lib/photo/one-by-one.ts last": "photos are named with their site (ofSite)",
  "lib/photo/discard-photo.ts held": "photos are named with their site (ofSite)",
  "lib/beads/work-again.ts toelineWorkers": "by the database; only the rest between two slices is shared",
  "lib/db/write-together.ts toelineWriters": "by the database",
  "lib/db/client.ts toelineFolders": "by the database",
  "lib/db/client.ts toelineDbs": "by the site's name",
  "lib/db/engine.ts toelineEngines": "by the database",
  "lib/account/auth.ts made": "by the database",
  "lib/account/read-actor.ts waiting": "by the request's headers",
  "lib/backup/aside.ts toelineNights": "a clock, which looks at each site in its turn",
  "lib/drill/pool.ts drawing": "which look is being drawn, for all: the folder is handed over",
  "lib/account/passphrase.ts judge": "a dictionary",
  "lib/beads/keep-facts.ts once": "a digest of the program's own tables",
  "lib/shop/tables-digest.ts once": "a digest of the program's own tables",
  "lib/pdf/open-font.ts opened": "the fonts of the program itself",
  "lib/case/read-case.ts shapes": "shapes of the program's own schemas",
  "lib/diagnose/model.ts published": "the program's own tables",
  "lib/diagnose/model.ts lastCounted": "by the counts themselves: whoever asks with others gets others",
};

const serverFiles = (folder: string): string[] =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: "utf8" })
    .map((file) => path.join(folder, file))
    .filter((file) => /\.tsx?$/.test(file) && !/\.d\.ts$/.test(file));

/** Whether it begins empty, so that somebody fills it later. */
const isEmptyStore = (node: ts.Expression | undefined): boolean =>
  node !== undefined &&
  ts.isNewExpression(node) &&
  /^(Weak)?(Map|Set)$|^Async/.test(node.expression.getText()) &&
  (node.arguments ?? []).length === 0;

/** Names under which a file keeps something for the process: on globalThis, in a variable that changes, in an empty store. */
function keptIn(text: string): string[] {
  if (!/^(export )?(let|var) |^(export )?const .*(new (Weak)?(Map|Set|Async)|globalThis)/m.test(text))
    return [];
  const source = ts.createSourceFile("file.ts", text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  for (const statement of source.statements) {
    if (!ts.isVariableStatement(statement)) continue;
    const changes = (statement.declarationList.flags & ts.NodeFlags.Const) === 0;
    for (const { name, initializer } of statement.declarationList.declarations) {
      const shared = /^globalThis as \{\s*(?:readonly )?(\w+)/.exec(initializer?.getText() ?? "")?.[1];
      if (shared) found.push(shared);
      else if (changes || isEmptyStore(initializer)) found.push(name.getText());
    }
  }
  return found;
}

describe("what is kept from one request to the next", () => {
  const files = ["lib", "app"].flatMap(serverFiles);

  it("is known, each with why it stays within its site", () => {
    const found = files
      .filter((file) => !file.startsWith("lib/cli/"))
      .flatMap((file) => {
        const text = readFileSync(path.join(root, file), "utf8");
        // A browser has one person before it.
        return /^["']use client["']/.test(text) ? [] : keptIn(text).map((name) => `${file} ${name}`);
      });
    expect(found.sort()).toEqual(Object.keys(kept).sort());
  });

  it("would be seen in each of its shapes", () => {
    expect(keptIn("const lists = new Map<string, number>();")).toEqual(["lists"]);
    expect(keptIn("export let last: string | null = null;")).toEqual(["last"]);
    expect(keptIn("const shared = globalThis as { toelineLists?: number };")).toEqual(["toelineLists"]);
    expect(keptIn('const words = new Set(["a"]);\nfunction f() { let x = new Map(); }')).toEqual([]);
  });

  it("lies in places that are asked for in one way: nobody else reads where they are", () => {
    const places = /env(?:\.|\["?)(TOELINE_DATA|DATABASE_URL|TOELINE_PHOTOS|TOELINE_SITES|TOELINE_BACKUPS)\b/;
    const readers = files.filter((file) => places.test(readFileSync(path.join(root, file), "utf8")));
    expect(readers).toEqual(["lib/db/data-dir.ts"]);
  });
});
