"use client";

import { usePathname } from "next/navigation";
import { useEffect } from "react";
import { deviceStore } from "./device-store";
import { NEW_BEAD } from "./use-own-address";
import { useWho } from "./who";
import { keptPage, PRIVATE_CACHES } from "./worker/cache-names";

/** After a page was opened, before it is kept: what it has to do itself comes first, ms. */
const CALM_MS = 2_000;

/** Lets this device open Toeline without network, where the browser offers it (https and this machine itself). */
export function WorkerHere() {
  const by = useWho();
  const pathname = usePathname();
  useEffect(() => {
    if (by === "nobody" || !("serviceWorker" in navigator)) return;
    void navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" }).catch(() => undefined);
  }, [by]);
  useEffect(() => {
    if (by === "nobody" || !("serviceWorker" in navigator)) return;
    const timer = setTimeout(() => void askToKeep(pathname), CALM_MS);
    return () => clearTimeout(timer);
  }, [by, pathname]);
  return null;
}

/** A page reached by a link was never loaded as one, so the worker fetches it; the empty workbench is kept fresh. */
async function askToKeep(pathname: string): Promise<void> {
  const { active } = await navigator.serviceWorker.ready;
  const isBead = keptPage({ pathname }) === "bead";
  active?.postMessage({ keep: [NEW_BEAD, ...(isBead ? [pathname] : [])], keepIfNone: ["/"] });
}

/** On the page where people sign in: nothing that was shown to anybody stays here; work that is not sent yet does. */
export function ForgetPages() {
  useEffect(() => void forgetPages().catch(() => undefined), []);
  return null;
}

async function forgetPages(): Promise<void> {
  const names = typeof caches === "undefined" ? [] : await caches.keys();
  for (const name of names) if (name.startsWith(PRIVATE_CACHES)) await caches.delete(name);
  const store = await deviceStore();
  for (const { key, held } of (await store?.beads()) ?? []) if (held.isSent) await store?.drop("beads", key);
}
