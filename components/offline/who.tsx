"use client";

import { createContext, useContext, type ReactNode } from "react";

const WhoContext = createContext("nobody");

/** Told once, at the root: whose work this device keeps (`actorRef` of lib/people). */
export function WhoProvider({ by, children }: { by: string; children: ReactNode }) {
  return <WhoContext value={by}>{children}</WhoContext>;
}

export function useWho(): string {
  return useContext(WhoContext);
}
