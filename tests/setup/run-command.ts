import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { buildAside } from "@/lib/cli/build-aside.mjs";
import { inDepth } from "./in-depth";

const root = fileURLToPath(new URL("../..", import.meta.url));

export type RunCommand = (
  words: readonly string[],
  input?: string,
) => { readonly code: number | null; readonly out: string; readonly err: string };

/**
 * A command of lib/cli in a process of its own: in the deep run just as npm runs it, in the ordinary one as one file, which
 * starts in a quarter of the time.
 */
export async function commandOf(name: "diagnose" | "judge" | "measure"): Promise<RunCommand> {
  const source = `lib/cli/${name}.ts`;
  const to = path.join(root, `tests/.out/commands/${name}-${process.pid}.mjs`);
  const isOneFile = inDepth(true, false);
  const program = isOneFile ? [await buildAside(root, { from: source, to })] : ["--import", "tsx", source];
  return (words, input = "") => {
    const done = spawnSync(process.execPath, [...program, ...words], { cwd: root, input, encoding: "utf8" });
    return { code: done.status, out: done.stdout, err: done.stderr };
  };
}
