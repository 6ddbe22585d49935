"use client";

import { Menu } from "lucide-react";
import Link from "next/link";
import { Popover } from "radix-ui";
import { LookSwitch } from "./look-switch";
import { useMenu } from "./menu-context";
import styles from "./more-menu.module.css";

/** All the places that are not in sight, light or dark, and the way out. */
export function MoreMenu({ className, all = false }: { className: string; all?: boolean }) {
  const { main, more, signedIn } = useMenu();
  const places = all ? [...main, ...more] : more;
  if (places.length === 0 && signedIn === null) return null;
  return (
    <Popover.Root>
      <Popover.Trigger className={className}>
        <Menu aria-hidden="true" size={24} />
        <span>More</span>
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.sheet} align="end" sideOffset={8} collisionPadding={8}>
          <nav aria-label="More of Toeline">
            {places.map(({ href, name }) => (
              <Popover.Close asChild key={href}>
                <Link href={href} className={styles.place}>
                  {name}
                </Link>
              </Popover.Close>
            ))}
          </nav>
          <LookSwitch />
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
