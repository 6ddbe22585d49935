import { existsSync } from "node:fs";
import path from "node:path";
import { asideThread, type AsideThread } from "./thread";
import type { Done } from "./words";
import type { HeadOf, InputOf, Works } from "./works";

type Lane = "papers" | "exports" | "looks";

/**
 * A thread for papers, which are drawn in one go, and one for exports, of which many may be open while their askers read. So
 * nobody's paper waits for somebody else's archive; and one for looks at all records, which take minutes. Own estimates: a
 * report of two hundred photos takes 150 MB.
 */
const limits = {
  papers: { memoryMb: 512, deadlineMs: 300_000, restMs: 300_000 },
  exports: { memoryMb: 768, deadlineMs: 600_000, restMs: 60_000 },
  looks: { memoryMb: 512, deadlineMs: 600_000, restMs: 10_000 },
} as const;

/** On globalThis, because a bundle may hold this module more than once. */
const shared = globalThis as { toelineAside?: Partial<Record<Lane, AsideThread>> };

/** Beside the pages, from the same build. */
const built = (): string => path.join(/* turbopackIgnore: true */ process.cwd(), ".next/toeline-aside.mjs");

const tableNames: ReadonlySet<keyof Works> = new Set(["beadsCsv", "marksCsv", "beadsJson", "archive"]);

function threadFor(name: keyof Works): AsideThread {
  const lane = name === "look" ? "looks" : tableNames.has(name) ? "exports" : "papers";
  return ((shared.toelineAside ??= {})[lane] ??= asideThread(built(), limits[lane]));
}

/**
 * What a piece of work comes to, done beside the thread that serves: its head, and its pieces as they are asked for. The
 * server that is built does so; while somebody works on the house, and in tests, it is done in place. `signal`: of the
 * request; whoever goes away stops it. Throws `Stopped` (`unlessStopped`).
 */
export async function doAside<N extends keyof Works>(
  name: N,
  input: InputOf<N>,
  signal?: AbortSignal,
): Promise<Done<HeadOf<N>>> {
  if (process.env.NODE_ENV === "production" && existsSync(built()))
    return (await threadFor(name).do(name, input, signal)) as Done<HeadOf<N>>;
  const { works } = await import("./works");
  const work = works[name] as unknown as (of: InputOf<N>) => Promise<Done<HeadOf<N>>>;
  return work(input);
}

type Paper = { [N in keyof Works]: HeadOf<N> extends null ? N : never }[keyof Works];

/** A paper, drawn aside. Throws as `doAside` does. */
export async function drawPaper<N extends Paper>(
  name: N,
  input: InputOf<N>,
  signal?: AbortSignal,
): Promise<Uint8Array> {
  return onlyPiece(await doAside(name, input, signal));
}

/** The first piece of a work, which then is over: what stays open keeps its thread from resting and from being stopped. */
export async function onlyPiece({ parts }: Done<unknown>): Promise<Uint8Array> {
  const { value } = await parts.next();
  await parts.return?.();
  return value as Uint8Array;
}
