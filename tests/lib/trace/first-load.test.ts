import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";

const root = new URL("../../../", import.meta.url).pathname;
const sources = ["app", "components", "lib"].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => ({ name: `${folder}/${name}`, text: readFileSync(join(root, folder, name), "utf8") })),
);
const naming = (what: RegExp): readonly string[] =>
  sources.filter(({ text }) => what.test(text)).map(({ name }) => name);

/** A bundler puts into a page whatever an import reaches; a worker by its address is a file of its own, fetched when asked. */
it("nothing that a page loads first reaches the runtime: it is imported by the worker alone, and that by its address", () => {
  expect(naming(/from "onnxruntime-web/)).toEqual(["components/bead/trace-runtime.ts"]);
  expect(naming(/(from|import\() ?"[^"]*trace-runtime"/)).toEqual(["components/bead/trace-worker.ts"]);
  expect(naming(/(from|import\() ?"[^"]*trace-worker/)).toEqual([]);
  expect(naming(/new Worker\(new URL\("\.\/trace-worker\.ts", import\.meta\.url\)/)).toEqual([
    "components/bead/ask-reader.ts",
  ]);
});

it("what finds holes and spatter is reached by that worker alone, and nothing is asked of it where it is off", () => {
  const inside = (name: string): boolean => name.startsWith("lib/trace/");
  expect(naming(/\bfindSpots\b/).filter((name) => !inside(name))).toEqual([
    "components/bead/trace-worker.ts",
  ]);
  expect(naming(/\brunSpots\b/).toSorted()).toEqual([
    "components/bead/trace-runtime.ts",
    "components/bead/trace-worker.ts",
  ]);
  expect(naming(/\blookForSpots\(/).toSorted()).toEqual([
    "components/bead/read-toes.ts",
    "components/bead/use-spots.ts",
  ]);
});
