import { subscribe } from "node:diagnostics_channel";
import type { IncomingMessage } from "node:http";
import { currentSite } from "@/lib/sites";

/** Whether an address in front is named, so that a proxy there tells who asks; without one nobody is believed. */
const behindProxy = (): boolean => Boolean(process.env["TOELINE_ORIGIN"]);

/** Where others reach this installation, or the site that is worked for; null: nobody named an address, and its own name leads nowhere from elsewhere. */
export const publicAddress = (): string | null =>
  (currentSite()?.origin ?? process.env["TOELINE_ORIGIN"])?.replace(/\/+$/, "") || null;

/** Whether people reach this server over TLS: then its cookies go over nothing else. */
export const overTls = (): boolean => publicAddress()?.startsWith("https://") ?? false;

/**
 * From now on every request of this process says by its own connection where it comes from: what a stranger wrote into
 * `x-forwarded-for` is written over, else each try could come from another address. Where several sites are served, the door
 * in front of them does so (`lib/cli/serve-sites.mjs`).
 */
export function tellOwnAddress(): void {
  subscribe("http.server.request.start", (message) => {
    const { request } = message as { request: IncomingMessage };
    if (!behindProxy()) request.headers["x-forwarded-for"] = request.socket.remoteAddress ?? "unknown";
  });
}
