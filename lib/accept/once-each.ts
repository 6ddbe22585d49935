import type { MissingReading } from "./verdict";

/** Every reading once, the one asked for most often first; those asked for equally often keep their order. */
export function onceEach(list: readonly MissingReading[]): readonly MissingReading[] {
  const key = (one: MissingReading): string => `${one.quantity}|${one.observationId ?? ""}`;
  const counts = new Map<string, number>();
  for (const one of list) counts.set(key(one), (counts.get(key(one)) ?? 0) + 1);
  const unique = [...new Map(list.map((one) => [key(one), one])).values()];
  return unique.sort((a, b) => counts.get(key(b))! - counts.get(key(a))!);
}
