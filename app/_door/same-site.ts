import { accountsRequired, isLoopbackHost } from "@/lib/account";
import { sameHost } from "./page-policy";

/**
 * Served without accounts on the loopback address, so two things must not get in: a page of another site posting to
 * us through the visitor's browser (Origin), and a foreign name that was made to point at 127.0.0.1 (Host).
 */
export function refuseForeign(request: Request): Response | null {
  const host = request.headers.get("host") ?? "";
  const origin = request.headers.get("origin");
  const site = request.headers.get("sec-fetch-site");
  // With accounts the session's cookie goes to our own name only, so any name we are reached by will do.
  const anyHost = accountsRequired();
  const foreignHost = !anyHost && !isLoopbackHost(host);
  const foreignOrigin = origin !== null && !sameHost(origin, host);
  // Another port of this machine is another site's page too, although browsers call it the same site.
  const foreignSite = site === "cross-site" || site === "same-site";
  // A program says neither; a browser that writes says both.
  const unsaid = site !== null && origin === null && !["GET", "HEAD"].includes(request.method);
  if (!foreignHost && !foreignOrigin && !foreignSite && !unsaid) return null;
  return Response.json(
    {
      issues: [
        {
          code: "foreign-request",
          message: "This address answers only pages it served itself. Open Toeline and do it there.",
        },
      ],
    },
    { status: 403 },
  );
}
