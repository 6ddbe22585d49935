"use client";

import { Plus } from "lucide-react";
import Link from "next/link";
import { usePathname } from "next/navigation";
import { useMenu } from "./menu-context";
import { MoreMenu } from "./more-menu";
import { wayIcons } from "./way-icons";
import styles from "./ways.module.css";

/** The places of every day: a rail beside a wide or low screen, a bar under a narrow one. A bar has room for two after "New". */
export function Ways() {
  const { main, mayStart } = useMenu();
  const path = usePathname();
  return (
    <nav className={styles.ways} aria-label="Toeline">
      {main.map(({ href, name, short, icon }) => {
        const Icon = wayIcons[icon];
        return (
          <Link
            key={href}
            href={href}
            className={styles.way}
            aria-label={spoken(name, short)}
            aria-current={isUnder(path, href) ? "page" : undefined}
          >
            <Icon aria-hidden="true" />
            <span>{short}</span>
          </Link>
        );
      })}
      {mayStart && (
        <Link href="/beads/new" className={`${styles.way} ${styles.start}`} aria-label="New bead">
          <Plus aria-hidden="true" size={26} />
          <span>New bead</span>
        </Link>
      )}
      <MoreMenu className={`${styles.way} ${styles.more}`} />
    </nav>
  );
}

/** The list of beads is the root; a bead lies under it. */
function isUnder(path: string, href: string): boolean {
  return href === "/"
    ? path === "/" || path.startsWith("/beads/")
    : path === href || path.startsWith(`${href}/`);
}

/** What is heard begins with what is seen, so that somebody who says it reaches it. */
function spoken(name: string, short: string): string {
  return name.includes(short) ? name : `${short}: ${name}`;
}
