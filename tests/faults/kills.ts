import { fork, type ChildProcess } from "node:child_process";
import { once } from "node:events";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import type { Told } from "./deeds";
import { lookAfter, type Acknowledged } from "./look-after";
import { prepareVictim } from "./prepare-victim";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** A victim as one file, which starts in a fraction of the time; beside node_modules, so that packages are found. */
export async function bundleVictim(name: "victim" | "cut-off-victim"): Promise<string> {
  const outfile = path.join(root, `tests/.out/${name}.mjs`);
  await build({
    entryPoints: [path.join(root, `tests/faults/${name}.ts`)],
    ...{ outfile, bundle: true, platform: "node", format: "esm", packages: "external" },
    alias: { "server-only": path.join(root, "tests/setup/server-only.ts") },
    tsconfig: path.join(root, "tsconfig.json"),
    logLevel: "error",
  });
  return outfile;
}

export interface KillCounts {
  readonly kills: number;
  readonly frozen: number;
  readonly acknowledged: number;
  readonly strays: number;
  /** Which deed was under way, how often. */
  readonly during: Readonly<Record<string, number>>;
  readonly wrong: readonly string[];
}

interface Asked {
  readonly seed: number;
  /** Moments to look at in all, and every how many of them the process is really killed; the others freeze it. */
  readonly moments: number;
  readonly killEvery: number;
  readonly fault?: string;
  /** Ends at the first wrong thing. */
  readonly untilWrong?: boolean;
  /** Told after each life of a process. */
  readonly onLife?: (moments: number, wrong: number) => void;
}

/** Numbers from 0 up to `below`, the same for the same seed. */
export function chances(seed: number): (below: number) => number {
  let state = (seed * 2_654_435_761) >>> 0;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** What all killing starts from: the victim as one file, a data folder to copy, and where to work. */
export interface KillGround {
  readonly script: string;
  readonly template: string;
  readonly work: string;
}

/** Archives: how many imports a life has. */
export async function killGround(work: string, archives: number): Promise<KillGround> {
  return { script: await bundleVictim("victim"), template: await prepareVictim(work, archives), work };
}

/**
 * Kills a writing process hard at random moments, and looks each time whether everything it acknowledged is there and
 * nothing is half. A frozen process (SIGSTOP) whose folder is copied leaves just what a killed one leaves, and goes on: so
 * one start serves for many moments. The last moment of each start is a SIGKILL.
 */
export async function killAtRandom(ground: KillGround, asked: Asked): Promise<KillCounts> {
  const { script, template, work } = ground;
  const next = chances(asked.seed);
  const counts = { kills: 0, frozen: 0, acknowledged: 0, strays: 0, during: {} as Record<string, number> };
  const wrong: string[] = [];
  for (let moment = 0; moment < asked.moments && !(asked.untilWrong && wrong.length > 0);) {
    const folder = path.join(work, `life-${moment}`);
    cpSync(template, folder, { recursive: true });
    const victim = startVictim(script, folder, [String(next(1e6)), asked.fault ?? ""]);
    for (let i = 0; i < asked.killEvery && moment < asked.moments; i += 1, moment += 1) {
      const isLast = i === asked.killEvery - 1 || moment === asked.moments - 1;
      await victim.untilBegan(1 + next(2));
      await pause(next(60));
      const taken = isLast ? await victim.kill() : await victim.freeze(`${folder}-frozen-${i}`);
      counts[isLast ? "kills" : "frozen"] += 1;
      counts.during[taken.during] = (counts.during[taken.during] ?? 0) + 1;
      const looked = await lookAfter(taken.folder, taken.acknowledged);
      if (isLast) counts.acknowledged += taken.acknowledged.length;
      counts.strays += looked.strays;
      wrong.push(...looked.wrong.map((text) => `moment ${moment}, ${taken.during}: ${text}`));
      if (!isLast) rmSync(taken.folder, { recursive: true, force: true });
      // It stood still meanwhile: what it does while nobody looks costs, and shows nothing.
      victim.goOn();
    }
    asked.onLife?.(moment, wrong.length);
    for (const name of readdirSync(work))
      if (name.startsWith(path.basename(folder)))
        rmSync(path.join(work, name), { recursive: true, force: true });
  }
  return { ...counts, wrong };
}

interface Taken {
  readonly folder: string;
  readonly acknowledged: readonly Acknowledged[];
  readonly during: string;
}

/** Starts a victim on a folder, with what else it is told. */
export function startVictim(script: string, folder: string, args: readonly string[]) {
  const child = fork(script, [folder, ...args], {
    cwd: root,
    stdio: ["ignore", "ignore", "pipe", "ipc"],
  });
  const said: Buffer[] = [];
  child.stderr?.on("data", (part: Buffer) => said.push(part));
  const acknowledged: Acknowledged[] = [];
  let began = 0;
  let during = "nothing";
  let wake = () => {};
  child.on("message", (told: Told) => {
    if (told.what === "done") acknowledged.push({ deed: told.deed, proof: told.proof });
    during = told.what === "began" ? told.deed : "nothing";
    if (told.what === "began") began += 1;
    wake();
  });
  let ended = false;
  child.on("exit", () => ((ended = true), wake()));
  const until = async (isSo: () => boolean) => {
    while (!isSo()) {
      if (ended)
        throw new Error(`the victim ended by itself: ${Buffer.concat(said).toString("utf8").slice(-2000)}`);
      await new Promise<void>((resolve) => (wake = resolve));
    }
  };
  const taken = (where: string): Taken => ({ folder: where, acknowledged: [...acknowledged], during });
  return {
    hasEnded: () => ended,
    goOn: () => void (ended || child.kill("SIGCONT")),
    untilBegan: async (more: number) => {
      const wanted = began + more;
      await until(() => began >= wanted);
    },
    async kill(): Promise<Taken> {
      const gone = ended ? null : once(child, "exit");
      child.kill("SIGKILL");
      await gone;
      return taken(folder);
    },
    /** Until `goOn`. */
    async freeze(copy: string): Promise<Taken> {
      // What was acknowledged before it stands still; what the channel still holds comes later and counts then.
      const before = taken(copy);
      child.kill("SIGSTOP");
      await untilStill(child);
      mkdirSync(copy);
      cpSync(folder, copy, { recursive: true });
      return before;
    },
  };
}

/** Until every thread of a process stands still. Where the system does not say, a moment has to do. */
async function untilStill(child: ChildProcess): Promise<void> {
  const tasks = `/proc/${child.pid}/task`;
  if (!existsSync(tasks)) return pause(50, undefined);
  const stands = (task: string) => {
    try {
      return /\) [TtZX]/.test(readFileSync(path.join(tasks, task, "stat"), "utf8"));
    } catch {
      return true;
    }
  };
  // One that ended meanwhile stands still as well.
  const all = () => {
    try {
      return readdirSync(tasks);
    } catch {
      return [];
    }
  };
  while (!all().every(stands)) await pause(2);
}
