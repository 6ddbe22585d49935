import { MM_PER_INCH } from "@/lib/base";
import { crackIds, type ImperfectionId } from "@/lib/trade";
import type { BeadFigure, Condition, Constant, Formula, SizeName, SymbolName, Test } from "../rule";

/** Every kind of crack of the trade's vocabulary, so that a kind added there is refused by every set at once. */
export const cracks: readonly ImperfectionId[] = crackIds;
/** Codes that limit crater cracks in a row of their own name the others by these. */
export const cracksOutsideCraters: readonly ImperfectionId[] = cracks.filter((id) => id !== "crater-crack");
/** Openings that gas leaves at the surface. */
export const pores = ["surface-porosity", "wormhole", "crater-pipe"] as const;

export const fillet: Condition = { kind: ["fillet"] };
export const butt: Condition = { kind: ["butt"] };

/** Short names for what the tables are written in. */
export const none: Test = { test: "none-allowed" };
export const allowed: Test = { test: "allowed" };
export const personDecides: Test = { test: "person-decides" };
export const figureByPerson = (figure: BeadFigure): Test => ({ test: "figure-by-person", figure });

export const times = (factor: Constant, of: SymbolName): Formula => ({ times: factor, of });
export const min = (...parts: readonly Formula[]): Formula => ({ min: parts });
export const max = (...parts: readonly Formula[]): Formula => ({ max: parts });
export const sum = (...parts: readonly Formula[]): Formula => ({ sum: parts });

export const inch = (value: number): number => value * MM_PER_INCH;
/** A limit that the code states in both unit systems: mm and inches. */
export const both = (mm: number, inches: number): Constant => ({ si: mm, us: inch(inches) });

export const each = (size: SizeName | readonly SizeName[], limit: Formula): Test => ({
  test: "each",
  size: typeof size === "string" ? [size] : size,
  limit,
});

/** Beyond the limit it is no reject: a qualified person decides. */
export const orPerson = (test: Test): Test =>
  "limit" in test && test.test !== "total" ? { ...test, beyond: "person-decides" } : test;

export const atMost = (
  figure: BeadFigure,
  limit: Formula,
  bySight = false,
): Extract<Test, { test: "bead" }> => ({
  test: "bead",
  figure,
  comparison: "<=",
  limit,
  bySight,
});

export const atLeast = (figure: BeadFigure, limit: Formula, bySight = false): Test => ({
  test: "bead",
  figure,
  comparison: ">=",
  limit,
  bySight,
});
