import {
  CacheFirst,
  ExpirationPlugin,
  NetworkFirst,
  NetworkOnly,
  Serwist,
  type PrecacheEntry,
  type SerwistPlugin,
} from "serwist";
import type { ToKeep } from "./to-keep";
import { keptPage, outdated, pagesCache, PHOTOS_CACHE, PRIVATE_CACHES } from "./cache-names";

/** Put in when the worker is built (lib/cli/build-worker.mjs). */
declare const BUILD: string;
declare const STATIC_FILES: readonly PrecacheEntry[];

/** The little of a worker's global that is used here; its own types would replace those of pages. */
interface WorkerScope {
  addEventListener(
    type: "activate" | "message",
    act: (event: { readonly data?: unknown; waitUntil(work: Promise<unknown>): void }) => void,
  ): void;
  addEventListener(
    type: "notificationclick",
    act: (event: {
      readonly notification: { readonly data: unknown; close(): void };
      waitUntil(work: Promise<unknown>): void;
    }) => void,
  ): void;
  readonly clients: { openWindow(url: string): Promise<unknown>; claim(): Promise<void> };
  addEventListener(
    type: "fetch",
    act: (event: {
      readonly request: Request;
      respondWith(answer: Promise<Response>): void;
      stopImmediatePropagation(): void;
    }) => void,
  ): void;
}
const scope = self as unknown as WorkerScope;

const NEW_BEAD = "/beads/new";
const WITHOUT_NETWORK = "/offline";
/** How long to wait for Toeline before a page comes from this device, s. */
const PATIENCE_S = 6;

/** Whoever was asked to sign in is nobody here any more: nothing of theirs stays. */
const forgetWhenSignedOut: SerwistPlugin = {
  fetchDidSucceed: async ({ response }) => {
    if (response.redirected && new URL(response.url).pathname === "/sign-in") await forget();
    return response;
  },
};

/** Only what was answered in full, under its own address. */
const whole: SerwistPlugin = {
  cacheWillUpdate: async ({ response }) =>
    response.status === 200 && !response.redirected ? response : null,
};

const pages = new NetworkFirst({
  cacheName: pagesCache(BUILD),
  networkTimeoutSeconds: PATIENCE_S,
  matchOptions: { ignoreSearch: true, ignoreVary: true },
  plugins: [forgetWhenSignedOut, whole, new ExpirationPlugin({ maxEntries: 80, purgeOnQuotaError: true })],
});

const photos = new CacheFirst({
  cacheName: PHOTOS_CACHE,
  plugins: [
    whole,
    new ExpirationPlugin({ maxEntries: 400, maxAgeSeconds: 60 * 60 * 24 * 60, purgeOnQuotaError: true }),
  ],
});

/** A bead that this device has no page of may still be known to it: the empty workbench looks. */
async function inPlaceOf(url: URL): Promise<Response> {
  const open = await caches.open(pagesCache(BUILD));
  const bench = keptPage(url) === "bead" ? await open.match(NEW_BEAD) : undefined;
  return bench ?? (await serwist.matchPrecache(WITHOUT_NETWORK)) ?? Response.error();
}

const serwist = new Serwist({
  precacheEntries: [...STATIC_FILES, { url: WITHOUT_NETWORK, revision: BUILD }],
  precacheOptions: { cleanupOutdatedCaches: true },
  skipWaiting: true,
  clientsClaim: true,
  runtimeCaching: [
    {
      matcher: ({ request, url, sameOrigin }) =>
        sameOrigin && request.mode === "navigate" && keptPage(url) !== null,
      handler: {
        handle: (options) => pages.handle(options).catch(() => inPlaceOf(new URL(options.request.url))),
      },
    },
    {
      matcher: ({ request, sameOrigin }) => sameOrigin && request.mode === "navigate",
      handler: {
        handle: (options) =>
          new NetworkOnly({ plugins: [forgetWhenSignedOut] })
            .handle(options)
            .catch(() => inPlaceOf(new URL(options.request.url))),
      },
    },
    {
      matcher: ({ request, url, sameOrigin }) =>
        sameOrigin && request.method === "GET" && url.pathname.startsWith("/api/photos/"),
      handler: photos,
    },
  ],
});

/**
 * A script that runs beside the page (the finder of the strip) reads its orders behind the "#" of its own address. A kept
 * answer brings the address that it was kept under, without them; one made anew has that of the request.
 */
scope.addEventListener("fetch", (event) => {
  if (event.request.destination !== "worker") return;
  event.stopImmediatePropagation();
  event.respondWith(madeAnew(event.request));
});

async function madeAnew(request: Request): Promise<Response> {
  const { origin, pathname } = new URL(request.url);
  const answer = (await serwist.matchPrecache(origin + pathname)) ?? (await fetch(request));
  return new Response(answer.body, answer);
}

// After the listener above, which answers first.
serwist.addEventListeners();

async function forget(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(PRIVATE_CACHES)).map((name) => caches.delete(name)),
  );
}

scope.addEventListener("activate", (event) =>
  event.waitUntil(
    caches.keys().then((names) => Promise.all(outdated(names, BUILD).map((name) => caches.delete(name)))),
  ),
);

// A notice leads to what it tells of (components/shell/notices.ts), to our own pages alone.
scope.addEventListener("notificationclick", (event) => {
  event.notification.close();
  const { data } = event.notification;
  if (typeof data === "string" && /^\/(?!\/)/.test(data)) event.waitUntil(scope.clients.openWindow(data));
});

scope.addEventListener("message", (event) => {
  const { pages: wanted = [], pagesIfNone = [], pictures = [] } = (event.data ?? {}) as ToKeep;
  const keepPicture = (address: string) =>
    photos.handle({ request: new Request(address), event }).catch(none);
  event.waitUntil(
    Promise.all([
      // A page that was on its way while this worker began was asked for past it, and its start did not take that page in.
      scope.clients.claim(),
      ...wanted.map(keepPage),
      ...pagesIfNone.map(keepIfMissing),
      ...[...new Set(pictures)].map(keepPicture),
    ]),
  );
});

async function keepPage(address: string): Promise<void> {
  const answer = await fetch(address).catch(none);
  if (answer?.status !== 200 || answer.redirected) return;
  await (await caches.open(pagesCache(BUILD))).put(address, answer);
}

async function keepIfMissing(address: string): Promise<void> {
  if (!(await (await caches.open(pagesCache(BUILD))).match(address))) await keepPage(address);
}

const none = (): undefined => undefined;
