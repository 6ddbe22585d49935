import type { ButtonHTMLAttributes } from "react";
import styles from "./button.module.css";

export interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** "main" is the one thing to do on this screen; "plain" everything else; "danger" what cannot be undone. */
  tone?: "main" | "plain" | "danger";
  size?: "normal" | "large";
}

export function Button({
  tone = "plain",
  size = "normal",
  className,
  type = "button",
  ...rest
}: ButtonProps) {
  return <button type={type} className={buttonClass(tone, size, className)} {...rest} />;
}

/** The same look for a link. */
export function buttonClass(
  tone: NonNullable<ButtonProps["tone"]> = "plain",
  size: NonNullable<ButtonProps["size"]> = "normal",
  extra?: string,
): string {
  return [styles.button, styles[tone], styles[size], extra].filter(Boolean).join(" ");
}
