"use client";

import type { ReactNode } from "react";
import { MenuContext, type MenuContent } from "./menu-context";
import { Ways } from "./ways";
import styles from "./ways.module.css";

/**
 * Told once, at the root: which pages this person may open, and the rail or bar that leads there. A page that is not theirs
 * is not offered; who may open none sees neither.
 */
export function MenuProvider({ content, children }: { content: MenuContent; children: ReactNode }) {
  const isEmpty = content.main.length + content.more.length === 0;
  return (
    <MenuContext value={content}>
      {!isEmpty && <Ways />}
      <div className={isEmpty ? undefined : styles.beside}>{children}</div>
    </MenuContext>
  );
}
