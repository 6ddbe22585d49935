"use client";

import Link from "next/link";
import { Popover } from "radix-ui";
import type { ReactNode } from "react";
import { LookSwitch } from "./look-switch";
import { useMenu, type MenuContent } from "./menu-context";
import styles from "./more-menu.module.css";

/** The menu as it opens: its button and, over the page, what it holds. */
export default function MoreSheet({
  className,
  places,
  button,
}: {
  className: string;
  /** `inRail`: a rail shows it, a bar does not. */
  places: readonly (MenuContent["more"][number] & { readonly inRail?: boolean })[];
  /** What stands on the button. */
  button: ReactNode;
}) {
  const { signedIn } = useMenu();
  return (
    <Popover.Root defaultOpen>
      <Popover.Trigger className={className}>{button}</Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.sheet} align="end" sideOffset={8} collisionPadding={8}>
          <nav aria-label="More of Toeline">
            {places.map(({ href, name, inRail }) => (
              <Popover.Close asChild key={href}>
                <Link href={href} className={`${styles.place} ${inRail ? styles.inRail : ""}`}>
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
