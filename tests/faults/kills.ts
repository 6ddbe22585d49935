import { fork, type ChildProcess } from "node:child_process";
import { once } from "node:events";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { allDeeds, type Deed, type OneDeed, type Told, type Wish } from "./deeds";
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

/** Of the moments at which one thing was under way: how often it was killed, or frozen; what was wrong then. */
export interface PhaseCount {
  kills: number;
  frozen: number;
  wrong: number;
}
export type Phase = Deed | OneDeed | "nothing";
export type PhaseCounts = Partial<Record<Phase, PhaseCount>>;

export function countPhase(counts: PhaseCounts, phase: Phase, isKill: boolean, wrong: number): void {
  const one = (counts[phase] ??= { kills: 0, frozen: 0, wrong: 0 });
  one[isKill ? "kills" : "frozen"] += 1;
  one.wrong += wrong;
}

export interface KillCounts {
  readonly kills: number;
  readonly frozen: number;
  readonly acknowledged: number;
  readonly strays: number;
  readonly during: PhaseCounts;
  readonly wrong: readonly string[];
}

interface Asked {
  readonly seed: number;
  /**
   * Moments to look at in all, and every how many of them the process is really killed; the others freeze it. That number has
   * no factor in common with the number of deeds, so that each of them is the one that is killed in its turn.
   */
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

/** For lives of so many moments: every deed is wished for in turn, so each has its share of archives. */
export async function killGround(work: string, killEvery: number): Promise<KillGround> {
  const archives = 1 + Math.ceil(killEvery / allDeeds.length);
  // One more for the first life, which learns how long an import takes.
  return { script: await bundleVictim("victim"), template: await prepareVictim(work, archives + 1), work };
}

/**
 * Kills a writing process hard at random moments, and looks each time whether everything it acknowledged is there and
 * nothing is half. A frozen process (SIGSTOP) whose folder is copied leaves just what a killed one leaves, and goes on: so
 * one start serves for many moments. The last moment of each start is a SIGKILL. Each deed has its turn, and the moment
 * falls anywhere in the time that it takes on this machine, or a little behind.
 */
export async function killAtRandom(ground: KillGround, asked: Asked): Promise<KillCounts> {
  const { script, template, work } = ground;
  const next = chances(asked.seed);
  const counts = { kills: 0, frozen: 0, acknowledged: 0, strays: 0, during: {} as PhaseCounts };
  const lasts = new Map<Deed, number>();
  const wrong: string[] = [];
  for (let moment = 0; moment < asked.moments && !(asked.untilWrong && wrong.length > 0);) {
    const folder = path.join(work, `life-${moment}`);
    cpSync(template, folder, { recursive: true });
    const victim = startVictim(script, folder, [String(next(1e6)), asked.fault ?? ""], lasts);
    await victim.learns();
    for (let i = 0; i < asked.killEvery && moment < asked.moments; i += 1, moment += 1) {
      const isLast = i === asked.killEvery - 1 || moment === asked.moments - 1;
      const deed = allDeeds[moment % allDeeds.length]!;
      await victim.begins(deed);
      await pause(next(1 + Math.ceil(1.2 * lasts.get(deed)!)));
      const taken = isLast ? await victim.kill() : await victim.freeze(`${folder}-frozen-${i}`);
      counts[isLast ? "kills" : "frozen"] += 1;
      const looked = await lookAfter(taken.folder, taken.acknowledged);
      countPhase(counts.during, taken.during, isLast, looked.wrong.length);
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
  readonly during: Phase;
}

/** Starts a victim on a folder, with what else it is told. Into `lasts` goes how long each deed takes, ms. */
export function startVictim(
  script: string,
  folder: string,
  args: readonly string[],
  lasts = new Map<Deed, number>(),
) {
  const child = fork(script, [folder, ...args], {
    cwd: root,
    stdio: ["ignore", "ignore", "pipe", "ipc"],
  });
  const said: Buffer[] = [];
  child.stderr?.on("data", (part: Buffer) => said.push(part));
  const acknowledged: Acknowledged[] = [];
  let began = 0;
  const times = new Map<Phase, number>();
  let since = 0;
  let during: Phase = "nothing";
  let wake = () => {};
  child.on("message", (told: Told) => {
    if (told.what === "done") acknowledged.push({ deed: told.deed, proof: told.proof });
    const tookMs = performance.now() - since;
    if (told.what === "done" && !Number.isNaN(tookMs)) lasts.set(told.deed, tookMs);
    during = told.what === "began" ? told.deed : "nothing";
    if (told.what === "began") {
      [began, since] = [began + 1, performance.now()];
      times.set(told.deed, (times.get(told.deed) ?? 0) + 1);
    }
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
    untilEnded: async () => {
      while (!ended) await new Promise<void>((resolve) => (wake = resolve));
    },
    goOn: () => void (ended || child.kill("SIGCONT")),
    /** Until it began this deed, for which it is asked. */
    begins: async (deed: Deed) => {
      const before = times.get(deed) ?? 0;
      child.send({ next: deed } satisfies Wish);
      await until(() => (times.get(deed) ?? 0) > before);
    },
    /** How long each deed takes where nobody stops it: done once, unless that is known. */
    learns: async () => {
      for (const deed of allDeeds.filter((one) => !lasts.has(one))) {
        child.send({ next: deed } satisfies Wish);
        await until(() => lasts.has(deed));
      }
    },
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
      // What was acknowledged before it stands still; what the channel still holds comes later and counts then. How long
      // this deed takes is not learnt: it stands still for most of it.
      since = Number.NaN;
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
