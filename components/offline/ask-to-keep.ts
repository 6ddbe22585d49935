import type { ToKeep } from "./worker/to-keep";

/** Asks the worker to keep these. Waits until one runs: a page may be done before its first worker has begun. */
export async function askToKeep(what: ToKeep): Promise<void> {
  // Browsers offer workers on https and on this machine itself.
  const worker = await navigator.serviceWorker?.ready;
  worker?.active?.postMessage(what);
}

/**
 * The pictures that the server made of a photo: one that was sent from here was shown from here until now, so nobody has
 * asked for them.
 */
export const picturesOf = (sha256: string): readonly string[] =>
  ["thumb", "small", "view"].map((size) => `/api/photos/${sha256}/${size}`);

/** The pictures of photos that this page has loaded so far, whoever answered. */
export function picturesLoaded(): readonly string[] {
  const loaded = performance.getEntriesByType("resource").map(({ name }) => new URL(name).pathname);
  return loaded.filter((path) => path.startsWith("/api/photos/"));
}
