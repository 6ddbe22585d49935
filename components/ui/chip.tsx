import type { ButtonHTMLAttributes } from "react";
import styles from "./chip.module.css";

/** A choice that is on or off: large enough for a glove, and told to a screen reader as pressed or not. */
export function Chip({ on, className, ...rest }: ButtonHTMLAttributes<HTMLButtonElement> & { on: boolean }) {
  return (
    <button
      type="button"
      aria-pressed={on}
      className={[styles.chip, on ? styles.on : "", className].filter(Boolean).join(" ")}
      {...rest}
    />
  );
}
