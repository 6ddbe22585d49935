import { asideSentence, unlessStopped, type AsideIssue } from "@/lib/aside";
import { fairTurns, linesOf, type FairTurns } from "@/lib/base";
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
  return (now, request, ...rest) => dearAnswer(now.pen.by, request, async () => work(now, request, ...rest));
}

/** As `dear`, where the sender is known otherwise. Whoever went away while they waited gets nothing made. */
export async function dearAnswer(
  sender: string,
  { signal }: Request,
  work: () => Promise<Response>,
): Promise<Response> {
  const made = await inDearTurn(sender, () => (signal.aborted ? wentAway() : answerOr(work)));
  return made ?? tooMuch();
}

/** The answer of a work that is done aside; 503 in words where it was stopped. */
export async function answerOr(work: () => Promise<Response>): Promise<Response> {
  const done = await unlessStopped(work);
  return done.ok ? done.value : cameToNothing(done.issues);
}

const cameToNothing = (issues: readonly AsideIssue[]): Response =>
  Response.json({ issues: linesOf(issues, asideSentence) }, { status: 503, headers: { "retry-after": "5" } });

/** Nobody reads it. */
const wentAway = async (): Promise<Response> => new Response(null, { status: 503 });

export const tooMuch = (message = DEAR_WORK_WAITS): Response =>
  Response.json(
    { issues: [{ code: "too-much-waiting", message }] },
    { status: 429, headers: { "retry-after": "10" } },
  );
