import styles from "./workbench.module.css";

/** In place of an answer that is older than what is on the screen. */
export function BehindNote() {
  return (
    <p className={styles.behind} role="status">
      Something was changed since this was worked out. Sizes, causes and verdict come again as soon as the
      rest of this page is here.
    </p>
  );
}
