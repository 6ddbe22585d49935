"use client";

import { useEffect } from "react";
import { askToKeep } from "./ask-to-keep";

/** Where a bead begins, and where one that has no record yet is found again on this device. */
export const NEW_BEAD = "/beads/new";

/** Before the page of a bead that was begun here is kept on the device: what has to be done itself comes first, ms. */
const CALM_MS = 2_000;

/**
 * The address that leads back to this bead: none before anything was done, then this device's own, then its record's. It is
 * written past the router, which goes on taking this page for the one where beads begin: told of the bead's own page, it
 * would put that one in place of this at the next action on the server, and photo, tool and part would be as on opening. Each
 * action writes the router's address back, so this looks after every paint.
 */
export function useOwnAddress(beadId: string, isNew: boolean, isBegun: boolean): void {
  useEffect(() => {
    const { pathname, hash } = window.location;
    if (pathname !== NEW_BEAD) return;
    if (!isNew) writePast(`/beads/${beadId}`);
    else if (isBegun && hash !== `#${beadId}`) writePast(`${NEW_BEAD}#${beadId}`);
  });
  useEffect(() => {
    if (isNew) return undefined;
    const timer = setTimeout(() => void askToKeep({ pages: [`/beads/${beadId}`] }), CALM_MS);
    return () => clearTimeout(timer);
  }, [beadId, isNew]);
}

/** With the router's own state, by which it knows its own writing and lets it through. */
const writePast = (address: string): void => window.history.replaceState(window.history.state, "", address);

/**
 * The router takes a bead that began here for the page where beads begin, so a way there would lead nowhere: it is opened
 * anew instead.
 */
export function useBeginAnew(): void {
  useEffect(() => {
    const open = (event: MouseEvent): void => {
      const isPlain = event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey;
      const link = event.target instanceof Element && event.target.closest(`a[href="${NEW_BEAD}"]`);
      if (!link || !isPlain) return;
      event.preventDefault();
      window.location.assign(NEW_BEAD);
    };
    document.addEventListener("click", open, true);
    return () => document.removeEventListener("click", open, true);
  }, []);
}
