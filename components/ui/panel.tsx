import type { ReactNode } from "react";
import styles from "./panel.module.css";

export type PanelTone = "plain" | "straw" | "bronze" | "purple" | "blue" | "ok" | "danger";

/** A block with a heading and a coloured spine on its left. */
export function Panel({
  title,
  tone = "plain",
  children,
  aside,
  id,
}: {
  title?: ReactNode;
  tone?: PanelTone;
  children: ReactNode;
  aside?: ReactNode;
  id?: string;
}) {
  return (
    <section className={`${styles.panel} ${styles[tone]}`} id={id}>
      {title !== undefined && (
        <header className={styles.head}>
          <h3>{title}</h3>
          {aside}
        </header>
      )}
      {children}
    </section>
  );
}
