import { invariant } from "@/lib/base";
import { formatQuantity } from "./format-quantity";

/** Seconds -> "8.5 s", "1 min 33 s", "1 h 2 min 5 s". To 0.1 s under a minute, to 1 s above. Not negative. */
export function formatDuration(seconds: number): string {
  invariant(
    Number.isFinite(seconds) && seconds >= 0,
    `a duration is finite and not negative, got ${seconds}`,
  );
  if (seconds < 59.95) return formatQuantity("seconds", seconds, "metric");
  const total = Math.round(seconds);
  const parts: readonly (readonly [number, string])[] = [
    [Math.floor(total / 3600), "h"],
    [Math.floor(total / 60) % 60, "min"],
    [total % 60, "s"],
  ];
  return parts.flatMap(([count, unit]) => (count > 0 ? [`${count} ${unit}`] : [])).join(" ");
}
