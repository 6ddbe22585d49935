import { fairTurns, type FairTurns } from "@/lib/base";
import { ofSite } from "@/lib/sites";
import type { Here } from "./here";

/** On globalThis, because a bundle may hold this module more than once. */
const shared = globalThis as { toelineDearWork?: FairTurns };

/** Papers, archives and checks: two at once, of each sender one, and a few that wait. Own estimates for two cores. */
const turns = (): FairTurns => (shared.toelineDearWork ??= fairTurns({ atOnce: 2, mostWaiting: 10 }));

export const DEAR_WORK_WAITS =
  "Ten papers or archives that you asked for are still being made. Wait until they are there, then ask again.";

/** What costs this server seconds, when this sender's turn comes; null: too much of theirs is waiting. */
export async function inDearTurn<T>(sender: string, work: () => Promise<T>): Promise<T | null> {
  const who = ofSite(sender);
  return turns().isFull(who) ? null : turns().run(who, work);
}

/** The work of a route, in fair turns by who asks; 429 in words where too much of theirs is waiting. */
export function dear<Rest extends readonly unknown[]>(
  work: (now: Here, request: Request, ...rest: Rest) => Response | Promise<Response>,
): (now: Here, request: Request, ...rest: Rest) => Promise<Response> {
  return async (now, request, ...rest) =>
    (await inDearTurn(now.pen.by, async () => work(now, request, ...rest))) ?? tooMuch();
}

export const tooMuch = (): Response =>
  Response.json(
    { issues: [{ code: "too-much-waiting", message: DEAR_WORK_WAITS }] },
    { status: 429, headers: { "retry-after": "10" } },
  );
