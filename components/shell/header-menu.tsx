"use client";

import { Menu } from "lucide-react";
import Link from "next/link";
import { Popover } from "radix-ui";
import { createContext, useContext, type ReactNode } from "react";
import styles from "./header-menu.module.css";

export interface MenuPlace {
  readonly href: string;
  readonly name: string;
}
interface MenuContent {
  readonly places: readonly MenuPlace[];
  /** Who is signed in, and how they leave; null where nobody has to. */
  readonly signedIn: { readonly name: string; readonly leave: () => Promise<void> } | null;
}

const MenuContext = createContext<MenuContent>({ places: [], signedIn: null });

/** Told once, at the root: which pages this person may open. A page that is not theirs is not offered. */
export function MenuProvider({ content, children }: { content: MenuContent; children: ReactNode }) {
  return <MenuContext value={content}>{children}</MenuContext>;
}

export function HeaderMenu() {
  const { places, signedIn } = useContext(MenuContext);
  if (places.length === 0) return null;
  return (
    <Popover.Root>
      <Popover.Trigger className={styles.trigger} aria-label="Menu">
        <Menu aria-hidden="true" size={26} />
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.sheet} align="end" sideOffset={8}>
          <nav aria-label="Toeline">
            {places.map(({ href, name }) => (
              <Popover.Close asChild key={href}>
                <Link href={href} className={styles.place}>
                  {name}
                </Link>
              </Popover.Close>
            ))}
          </nav>
          {signedIn && (
            <form action={signedIn.leave} className={styles.leave}>
              <Popover.Close asChild>
                <Link href="/me">{signedIn.name}</Link>
              </Popover.Close>
              <button type="submit">Sign out</button>
            </form>
          )}
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
