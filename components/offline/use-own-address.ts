"use client";

import { useEffect } from "react";

/** Where a bead begins, and where one that has no record yet is found again on this device. */
export const NEW_BEAD = "/beads/new";

/** The address that leads back to this bead: none before anything was done, then this device's own, then its record's. */
export function useOwnAddress(beadId: string, isNew: boolean, isBegun: boolean): void {
  useEffect(() => {
    if (window.location.pathname !== NEW_BEAD) return;
    if (!isNew) window.history.replaceState(null, "", `/beads/${beadId}`);
    else if (isBegun) window.history.replaceState(null, "", `${NEW_BEAD}#${beadId}`);
  }, [beadId, isNew, isBegun]);
}
