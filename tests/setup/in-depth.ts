import { it } from "vitest";

/**
 * How much of a slow proof the ordinary run does, and how much the deep one (`npm run test:deep`, which CI runs too). The
 * same test runs in both: what is promised is the same, over fewer or more cases.
 */
export const inDepth = <T>(ordinary: T, deep: T): T => (process.env["TOELINE_DEEP"] ? deep : ordinary);

/** A test that the deep run alone makes: a rarer way through, of which the ordinary run sees the usual one. */
export const itDeep = inDepth(it.skip, it);
