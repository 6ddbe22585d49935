"use client";

import { createContext, use } from "react";
import type { WayIcon } from "./way-icons";

export interface MenuPlace {
  readonly href: string;
  readonly name: string;
}
/** A place that is always in sight, with a word short enough to stand under its picture. */
export interface MainPlace extends MenuPlace {
  readonly short: string;
  readonly icon: WayIcon;
}
export interface MenuContent {
  /** At most four, by what this person does here. */
  readonly main: readonly MainPlace[];
  readonly more: readonly MenuPlace[];
  readonly mayStart: boolean;
  /** Who is signed in, and how they leave; null where nobody has to. */
  readonly signedIn: { readonly name: string; readonly leave: () => Promise<void> } | null;
}

export const MenuContext = createContext<MenuContent>({
  main: [],
  more: [],
  mayStart: false,
  signedIn: null,
});

export const useMenu = (): MenuContent => use(MenuContext);
