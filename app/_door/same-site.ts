/**
 * Served without accounts on the loopback address, so two things must not get in: a page of another site posting to
 * us through the visitor's browser (Origin), and a foreign name that was made to point at 127.0.0.1 (Host).
 */
export function refuseForeign(request: Request): Response | null {
  const host = request.headers.get("host") ?? "";
  const origin = request.headers.get("origin");
  const site = request.headers.get("sec-fetch-site");
  const foreignHost = !/^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/.test(host);
  const foreignOrigin = origin !== null && origin !== `http://${host}`;
  if (!foreignHost && !foreignOrigin && site !== "cross-site") return null;
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
