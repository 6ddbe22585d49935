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
  level = 3,
}: {
  title?: ReactNode;
  /** Of its heading: 2 where it follows the page's own, for none may be left out. */
  level?: 2 | 3;
  tone?: PanelTone;
  children: ReactNode;
  aside?: ReactNode;
  id?: string;
}) {
  const Heading = `h${level}` as const;
  return (
    <section className={`${styles.panel} ${styles[tone]}`} id={id}>
      {title !== undefined && (
        <header className={styles.head}>
          <Heading className={styles.title}>{title}</Heading>
          {aside}
        </header>
      )}
      {children}
    </section>
  );
}
