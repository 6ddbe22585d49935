import { spawn } from "node:child_process";
import { setPriority } from "node:os";
import path from "node:path";
import { currentSite, envOfSite } from "@/lib/sites";

export interface RanAside {
  readonly code: number | null;
  /** What it said on both its outputs; `out`: on the first alone. */
  readonly said: string;
  readonly out: string;
}

/**
 * Runs one of our commands in a process of its own, at a lower priority, so that whoever is served meanwhile does not wait and
 * what it takes of memory is its own. `command`: its file in lib/cli. Where several sites are served it runs for the one that
 * is worked for, and is told of no other.
 */
export function runAside(
  command: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Promise<RanAside> {
  const root = process.cwd();
  const site = currentSite();
  const script = path.join(/* turbopackIgnore: true */ root, "lib/cli", command);
  const child = spawn(process.execPath, ["--conditions=react-server", "--import", "tsx", script, ...args], {
    cwd: root,
    env: { ...process.env, ...(site && envOfSite(site)), ...env, NODE_OPTIONS: "" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  try {
    if (child.pid !== undefined) setPriority(child.pid, 10);
  } catch {
    // It is gone already, or this system has no priorities.
  }
  return new Promise((resolve) => {
    const [said, out]: [Buffer[], Buffer[]] = [[], []];
    child.stdout.on("data", (part: Buffer) => (said.push(part), out.push(part)));
    child.stderr.on("data", (part: Buffer) => said.push(part));
    const text = (parts: readonly Buffer[]) => Buffer.concat(parts).toString("utf8").trim();
    child.on("error", ({ message }) => resolve({ code: null, said: message, out: "" }));
    child.on("close", (code) => resolve({ code, said: text(said), out: text(out) }));
  });
}
