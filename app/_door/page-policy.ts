/**
 * What a page may load and who may show it. Scripts and style sheets carry this answer's own nonce, which nobody knows
 * beforehand; attributes may style (widths of bars, places of labels), because no script hides in one.
 *
 * @param dev The development server compiles in the browser.
 */
export function pagePolicy(nonce: string, dev: boolean): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${dev ? " 'unsafe-eval'" : ""}`,
    `style-src 'self' 'nonce-${nonce}'`,
    `style-src-elem 'self' ${dev ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    // A photo that waits on this device is read from there.
    "connect-src 'self' blob:",
    "worker-src 'self' blob:",
    "object-src 'none'",
    "frame-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join("; ");
}

/** Whether what a browser sends to a page comes from one of ours: it names the origin, and that is this very host. */
export function isOwnWrite(method: string, headers: Headers): boolean {
  if (method === "GET" || method === "HEAD") return true;
  return sameHost(headers.get("origin"), headers.get("host"));
}

export function sameHost(origin: string | null, host: string | null): boolean {
  return origin !== null && URL.canParse(origin) && new URL(origin).host === host;
}
