import { needsCheck, type Source } from "@/lib/base";
import { rowsAt, windowQuantities, type WindowQuantity, type WindowQuery } from "./placed-rows";
import { together } from "./together";

/** One document's figures for one quantity, in the quantity's SI unit. Both ends belong to it. */
export interface Interval {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
}

/**
 * What the documents and the trade together allow. `low` and `high` are the outer ends over `parts`; where documents
 * disagree each stands in `parts` with its own source. `source` names all of them, at the confidence of the weakest.
 */
export interface Band extends Interval {
  readonly parts: readonly Interval[];
}

/** Starting windows, never limits. null: no document or practice known to us gives it. */
export type ParameterWindow = Readonly<Record<WindowQuantity, Band | null>>;

/**
 * The span of all rows for one electrode, diameter, gas, transfer and set of positions, in SI. Its corners belong to
 * different documents: what goes with what stands in `windowLines`. Returns null when no row holds. Knowing less never
 * narrows a band: every alternative left open is included.
 */
export function parameterWindow(query: WindowQuery): ParameterWindow | null {
  const places = query.positions.map((position) => rowsAt(query, position));
  const bands = windowQuantities.map((quantity) => {
    const parts = places.flatMap((rowsOf) =>
      rowsOf(quantity).flatMap(({ spans, source }): readonly Interval[] => {
        const span = spans[quantity];
        return span === null ? [] : [{ low: span[0], high: span[1], source }];
      }),
    );
    return [quantity, bandOf(parts)] as const;
  });
  if (bands.every(([, band]) => band === null)) return null;
  return Object.fromEntries(bands) as Record<WindowQuantity, Band | null>;
}

/** True when a text was read for it; false for memory, common practice and our own estimates. */
export function isPublished(source: Source): boolean {
  return !needsCheck(source) || source.confidence === "seen-older" || source.confidence === "seen-part";
}

function bandOf(parts: readonly Interval[]): Band | null {
  if (parts.length === 0) return null;
  const unique = parts.filter((part, i) => parts.findIndex((other) => sameInterval(part, other)) === i);
  return {
    low: Math.min(...unique.map((part) => part.low)),
    high: Math.max(...unique.map((part) => part.high)),
    source: together(unique.map((part) => part.source)),
    parts: unique,
  };
}

function sameInterval(a: Interval, b: Interval): boolean {
  return a.low === b.low && a.high === b.high && a.source.document === b.source.document;
}
