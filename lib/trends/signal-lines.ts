import type { PChart } from "./p-chart";
import type { Signal } from "./signals";

const ruleWords: Readonly<Record<Signal["rule"], string>> = {
  "beyond-limit": "beyond its control limit",
  "eight-on-one-side": "eight periods in a row on one side of the centre",
  "two-of-three-beyond-two-sigma": "two of three beyond two sigma",
  "four-of-five-beyond-one-sigma": "four of five beyond one sigma",
};

/** What on the chart asks for a reason, a line each: when, which rule, and on which side. */
export function signalLines({
  signals,
  points,
}: {
  readonly signals: PChart["signals"];
  readonly points: readonly { readonly label: string }[];
}): readonly string[] {
  return signals.map(({ rule, side, from, to }) => {
    const [first, last] = [points[from]?.label ?? "", points[to]?.label ?? ""];
    const where = first === last ? first : `${first} to ${last}`;
    return `${where}: ${ruleWords[rule]}, ${side === "above" ? "more" : "fewer"} rejects than the rest. Look for what changed.`;
  });
}
