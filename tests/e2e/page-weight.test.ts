/**
 * What each page makes a phone fetch before it can be used, so that it does not grow unseen. Read off what the build wrote down,
 * without a browser; `npm run -s bench -- scripts` counts the same in one, and how much comes afterwards.
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { runInNewContext } from "node:vm";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";

const next = fileURLToPath(new URL("../../.next", import.meta.url));
const pages = path.join(next, "server/app");

/** Kilobytes (1000 bytes) of script, gzipped, as measured on 2026-11-27. What weighs more than `LIGHT` is named. */
const measured: Readonly<Record<string, number>> = {
  "/beads/[beadId]": 353.4,
  "/beads/new": 354.2,
  "/hand-in/[code]": 166.4,
  "/": 151.7,
  "/beads/[beadId]/sheet": 166.8,
  "/beads/[beadId]/compare": 191.7,
  "/cards/new": 195.9,
  "/criteria/[key]": 203.3,
  "/criteria/new": 202.7,
  "/exercises/new": 226.3,
  "/exercises/[exerciseId]/edit": 226.3,
  "/eye/[roundId]": 163.1,
  "/feedback/[handInId]": 306.8,
  "/inspections/[inspectionId]": 198.5,
  "/inspections/[inspectionId]/welds/[weldId]": 199.1,
  "/instruments/[instrumentId]/new": 182.5,
  "/jobs/[jobId]": 203.6,
  "/plan": 236.5,
  // Two charts, by a library that weighs 130 of it.
  "/trends": 283.4,
  "/trials/[trialId]": 290.2,
  "/trials/new": 199.8,
};
const LIGHT = 153.7;
const GROWTH = 1.05;

interface Manifest {
  /** By the layout, page or error page that asks for them. */
  readonly entryJSFiles: Readonly<Record<string, readonly string[]>>;
}
const isScript = (file: string): boolean => file.endsWith(".js");
const read = <T>(...names: string[]): T => JSON.parse(readFileSync(path.join(...names), "utf8")) as T;

/** A manifest of Next's own is a script that hangs itself up at the global object. */
function manifestOf(file: string): readonly [route: string, manifest: Manifest] {
  const here: { __RSC_MANIFEST?: Readonly<Record<string, Manifest>> } = {};
  runInNewContext(readFileSync(path.join(pages, file), "utf8"), { globalThis: here });
  const [found] = Object.entries(here.__RSC_MANIFEST ?? {});
  if (!found) throw new Error(`${file} names no page`);
  return found;
}

const weights = new Map<string, number>();
function kBOf(file: string): number {
  const kB = weights.get(file) ?? gzipSync(readFileSync(path.join(next, file))).length / 1000;
  weights.set(file, kB);
  return kB;
}

/** Scripts of a page: Next's own, those it and its layouts ask for, and what `next/dynamic` brings with it, the canvas above all. */
function scriptsOf(folder: string, { entryJSFiles }: Manifest): readonly string[] {
  const { rootMainFiles } = read<{ rootMainFiles: string[] }>(pages, folder, "build-manifest.json");
  const brought = read<Record<string, { files: string[] }>>(pages, folder, "react-loadable-manifest.json");
  const all = [
    ...rootMainFiles,
    ...Object.values(entryJSFiles).flat(),
    ...Object.values(brought).flatMap(({ files }) => files),
  ];
  return [...new Set(all.map((file) => file.replace(/^\/_next\//, "")).filter(isScript))];
}

const END = "page_client-reference-manifest.js";
const found = readdirSync(pages, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(END))
  .map((file) => {
    const [route, manifest] = manifestOf(file);
    const scripts = scriptsOf(path.join(path.dirname(file), "page"), manifest);
    const kB = scripts.reduce((sum, script) => sum + kBOf(script), 0);
    return { route: route.replace(/\/page$/, "") || "/", kB };
  });

describe("the scripts that a page stands with", () => {
  it("are counted for every page there is", () => {
    expect(found.length).toBeGreaterThan(50);
    const routes = new Set(found.map(({ route }) => route));
    expect(Object.keys(measured).filter((route) => !routes.has(route))).toEqual([]);
    // React and Next alone weigh more than this: a page that weighs less was not counted whole.
    expect(Math.min(...found.map(({ kB }) => kB))).toBeGreaterThan(120);
  });

  it("weigh no more than they did, and a twentieth", () => {
    const grown = found
      .filter(({ route, kB }) => kB > GROWTH * (measured[route] ?? LIGHT))
      .map(({ route, kB }) => `${route}: ${kB.toFixed(1)} kB, was ${measured[route] ?? LIGHT}`);
    expect(grown).toEqual([]);
  });

  it("are named where they weigh less by a tenth: what was won is held", () => {
    const lighter = found
      .filter(({ route, kB }) => kB < 0.9 * (measured[route] ?? 0))
      .map(({ route, kB }) => `${route}: ${kB.toFixed(1)} kB, was ${measured[route]}`);
    expect(lighter).toEqual([]);
  });
});
