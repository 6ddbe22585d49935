import { ok, type Result } from "@/lib/base";
import type { UnitsIssue } from "./issue";
import { parseLength, type ParseLengthOptions } from "./parse-length";
import { MM_PER_INCH } from "./tables/factors";
import { wireSizes, type WireSize } from "./tables/wire-sizes";
import { tidy } from "./tidy";

/** No filler is thinner than 0.5 mm nor as thick as 0.2 in without being written as a fraction (common practice). */
const LEAST_MM = 0.5;
const BARE_INCH_DECIMAL = /^0?[.,]\d+$/;
/** Wider than the rounding of any way to write a size, narrower than half the gap between two sizes: a test checks it. */
const TOLERANCE_MM = 0.02;

/**
 * The trade size a diameter names, by its metric or its inch name; null when it is no listed size.
 * An inch name shared by two metric sizes means the nearer one: 1/4 in is 6.4 mm rather than 6.
 */
export function wireSize(mm: number): WireSize | null {
  const is = (at: number) => Math.abs(at - mm) <= TOLERANCE_MM;
  const byMetric = wireSizes.find((size) => is(size.mm));
  if (byMetric !== undefined) return byMetric;
  const byInch = wireSizes.filter((size) => is(size.inches * MM_PER_INCH));
  return byInch.sort((a, b) => Math.abs(a.mm - mm) - Math.abs(b.mm - mm))[0] ?? null;
}

/**
 * The diameter of a wire or rod, nominal mm: ".045", "3/32 in" and "1.2" all give the size on the spool (1.2, 2.4,
 * 1.2), so that a table keyed by nominal size is found. A bare number too thin for millimetres (".035") is inches.
 * A size that is not listed is kept as typed. Issues: as `parseLength`.
 */
export function parseWireDiameter(typed: string, options: ParseLengthOptions): Result<number, UnitsIssue> {
  const text = tidy(typed);
  const asMm = Number(text.replace(",", "."));
  const isInches = BARE_INCH_DECIMAL.test(text) && asMm > 0 && asMm < LEAST_MM;
  const bounds = { min: LEAST_MM, max: 10, ...options };
  const read = parseLength(typed, isInches ? { ...bounds, default: "in" } : bounds);
  return read.ok ? ok(wireSize(read.value)?.mm ?? read.value) : read;
}
