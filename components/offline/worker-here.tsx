"use client";

import { useEffect } from "react";
import { deviceStore } from "./device-store";
import { NEW_BEAD } from "./use-own-address";
import { useWho } from "./who";
import { keptPage, PRIVATE_CACHES } from "./worker/cache-names";

/** Lets this device open Toeline without network, where the browser offers it (https and this machine itself). */
export function WorkerHere() {
  const by = useWho();
  useEffect(() => {
    if (by === "nobody" || !("serviceWorker" in navigator)) return;
    void keepWhatIsOpen().catch(() => undefined);
  }, [by]);
  return null;
}

async function keepWhatIsOpen(): Promise<void> {
  await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
  const { active } = await navigator.serviceWorker.ready;
  const page = keptPage(window.location);
  const isOpen = page !== null && page !== "new";
  active?.postMessage({ keep: [NEW_BEAD, ...(isOpen ? [window.location.pathname] : [])] });
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
