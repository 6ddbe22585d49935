import Link from "next/link";
import type { ReactNode } from "react";
import styles from "./header.module.css";
import { MoreMenu } from "./more-menu";

/** The bar on top: the name, the way back to the list, and what belongs to this page; all ways, where no other bar shows them. */
export function Header({ children }: { children?: ReactNode }) {
  return (
    <header className={styles.header}>
      <div className={styles.inner}>
        <Link href="/" className={styles.name} aria-label="Toeline: all beads">
          <svg viewBox="0 0 40 24" width="40" height="24" aria-hidden="true">
            <path d="M2 20 H38" stroke="var(--on-band)" strokeWidth="3" />
            <path d="M9 20 C 12 6, 28 6, 31 20" fill="none" stroke="var(--straw)" strokeWidth="3" />
            <circle cx="9" cy="20" r="3.2" fill="var(--on-band)" />
            <circle cx="31" cy="20" r="3.2" fill="var(--on-band)" />
          </svg>
          <span className={styles.word}>Toeline</span>
        </Link>
        <div className={styles.slot}>
          {children}
          <MoreMenu all className={styles.ways ?? ""} />
        </div>
      </div>
      <div className={styles.temper} aria-hidden="true" />
    </header>
  );
}
