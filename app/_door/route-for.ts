import { readActor, waitOfToken } from "@/lib/account";
import { db } from "@/lib/db";
import type { Deed, Thing } from "@/lib/people";
import { handInThing } from "@/lib/classroom";
import { hereOf, thingOfBead, type Here } from "./here";
import { refuseForeign } from "./same-site";

type Work<P> = (now: Here, request: Request, params: P) => Response | Promise<Response>;
type Route<P> = (request: Request, context: { params: Promise<P> }) => Promise<Response>;

const refusals = {
  401: { code: "sign-in-first", message: "Sign in, or send a token: authorization: Bearer …" },
  429: { code: "too-many-requests", message: "This token was used too often just now. Wait a minute." },
  403: { code: "not-yours", message: "Your role or this token's scopes do not reach this far." },
} as const;

function refusal(status: keyof typeof refusals, headers: Record<string, string> = {}): Response {
  return Response.json(
    { issues: [refusals[status]] },
    { status, headers: { "cache-control": "private, no-store", ...headers } },
  );
}

/** Every route handler is made here: who asks and whether they may, then the work; or the answer that refuses them. */
function routeOn<P>(deed: Deed, thingOf: (params: P) => Promise<Thing | undefined>, work: Work<P>): Route<P> {
  return async (request, context) => {
    const foreign = refuseForeign(request);
    if (foreign) return foreign;
    const actor = await readActor(db(), request.headers);
    if (actor.kind === "nobody") {
      const seconds = waitOfToken(request.headers);
      return seconds === null ? refusal(401) : refusal(429, { "retry-after": String(seconds) });
    }
    const now = hereOf(actor);
    const params = await context.params;
    return now.may(deed, await thingOf(params)) ? work(now, request, params) : refusal(403);
  };
}

export function routeFor(deed: Deed, work: Work<object>): (request: Request) => Promise<Response> {
  const route = pathRouteFor<object>(deed, work);
  return (request) => route(request, { params: Promise.resolve({}) });
}

/** As `routeFor`, where the address has parameters. */
export function pathRouteFor<P>(deed: Deed, work: Work<P>): Route<P> {
  return routeOn<P>(deed, async () => undefined, work);
}

/** As `routeFor`, for what belongs to somebody, as `thingOf` says. */
export function thingRouteFor<P>(
  deed: Deed,
  thingOf: (params: P) => Promise<Thing>,
  work: Work<P>,
): Route<P> {
  return routeOn<P>(deed, thingOf, work);
}

/** As `routeFor`, for what belongs to one bead. */
export function beadRouteFor<P extends { readonly beadId: string } = { beadId: string }>(
  deed: Deed,
  work: Work<P>,
): Route<P> {
  return routeOn<P>(deed, ({ beadId }) => thingOfBead(beadId), work);
}

/** As `routeFor`, for what belongs to one hand-in; one that is not there belongs to nobody. */
export function handInRouteFor(deed: Deed, work: Work<{ handInId: string }>): Route<{ handInId: string }> {
  return routeOn(
    deed,
    async ({ handInId }) => (await handInThing(db(), handInId)) ?? { personId: null },
    work,
  );
}
