import type { Result } from "@/lib/base";
import { refuse, type ParseOptions, type UnitsIssue } from "./issue";
import { checkBounds, readQuantity, type QuantityKind } from "./read-quantity";
import { timeNames } from "./tables/factors";
import { tidy } from "./tidy";

/** Minutes and seconds may also be written ' and ". */
const names: Readonly<Record<string, number>> = { ...timeNames, m: 60, "'": 60, '"': 1, "''": 1 };

/** Ten hours: longer than any arc. */
const kind: QuantityKind = {
  unit: "s",
  factorOf: (name) => (Object.hasOwn(names, name) ? names[name] : undefined),
  max: 36_000,
  example: "93 s, 1:33 or 1 min 33 s",
};
const CLOCK = /^(?:(\d+):)?(\d+):(\d+(?:[.,]\d+)?)$/;
const PARTS =
  /^(?:(\d+) ?(?:h|hr|hours?))? ?(?:(\d+) ?(?:min|mins|minutes?|m|'))? ?(?:(\d+(?:[.,]\d+)?) ?(?:s|secs?|seconds?|"|''))?$/;

/** A time, seconds: "93", "93 s", "1:33", "1 min 33 s" (1.55 min, not 1.33), "1.5 min". A bare number is seconds. */
export function parseDuration(typed: string, options: ParseOptions = {}): Result<number, UnitsIssue> {
  const text = tidy(typed);
  const parts = CLOCK.exec(text) ?? (text === "" ? null : PARTS.exec(text));
  if (!parts) return readQuantity(typed, kind, "s", options);
  const [hours, minutes, seconds] = [1, 2, 3].map((at) => Number((parts[at] ?? "0").replace(",", "."))) as [
    number,
    number,
    number,
  ];
  const hasLarger = {
    minutes: parts[1] !== undefined,
    seconds: parts[1] !== undefined || parts[2] !== undefined,
  };
  if ((hasLarger.minutes && minutes >= 60) || (hasLarger.seconds && seconds >= 60)) {
    return refuse("clock-out-of-range", typed, options, { example: kind.example });
  }
  return checkBounds(hours * 3600 + minutes * 60 + seconds, kind, typed, options);
}
