"use client";

import { useEffect } from "react";
import { deviceStore } from "./device-store";
import { PRIVATE_CACHES } from "./worker/cache-names";

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
