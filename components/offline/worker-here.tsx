"use client";

import { usePathname } from "next/navigation";
import { useEffect } from "react";
import { askToKeep, picturesLoaded } from "./ask-to-keep";
import { NEW_BEAD } from "./use-own-address";
import { useWho } from "./who";
import { keptPage } from "./worker/cache-names";

/** After a page was opened, before it is kept: what it has to do itself comes first, ms. */
const CALM_MS = 2_000;

/** Lets this device open Toeline without network, where the browser offers it (https and this machine itself). */
export function WorkerHere() {
  const by = useWho();
  const pathname = usePathname();
  const isOffered = by !== "nobody" && typeof navigator !== "undefined" && "serviceWorker" in navigator;
  useEffect(() => {
    if (!isOffered) return;
    void navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" }).catch(() => undefined);
    // What was loaded before a worker stood between went past it.
    const begins = () => setTimeout(() => void askToKeep({ pictures: picturesLoaded() }), CALM_MS);
    navigator.serviceWorker.addEventListener("controllerchange", begins);
    return () => navigator.serviceWorker.removeEventListener("controllerchange", begins);
  }, [isOffered]);
  useEffect(() => {
    if (!isOffered) return;
    const pages = [NEW_BEAD, ...(keptPage({ pathname }) === "bead" ? [pathname] : [])];
    const timer = setTimeout(() => void askToKeep({ pages, pagesIfNone: ["/"] }), CALM_MS);
    return () => clearTimeout(timer);
  }, [isOffered, pathname]);
  return null;
}
