import { AsyncLocalStorage } from "node:async_hooks";
import { isManySites } from "./sites.mjs";

/** On globalThis, because the server, its bundles and the tests each hold this module by themselves. */
const KEY = Symbol.for("toeline.site");
const storage = (globalThis[KEY] ??= new AsyncLocalStorage());

/** Somebody asks for a database or a place where no site is known. It is a fault of this program, and never answered. */
export class NoSite extends Error {
  constructor() {
    super("several sites are served, and nobody said for which of them this is");
  }
}

/** Does work for one site: whatever it asks for, and whatever follows from it, is of that site. */
export const inSite = (site, work) => storage.run(site, work);

/** The site that is worked for just now; null: there is only one. Throws where there are several and none is known. */
export function currentSite() {
  const site = storage.getStore() ?? null;
  if (site === null && isManySites()) throw new NoSite();
  return site;
}

/** A key for what is kept once for a process: another site's is another. */
export const ofSite = (key) => `${currentSite()?.name ?? ""} ${key}`;
