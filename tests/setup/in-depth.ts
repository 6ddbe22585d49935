/**
 * How much of a slow proof the ordinary run does, and how much the deep one (`npm run test:deep`, which CI runs too). The
 * same test runs in both: what is promised is the same, over fewer or more cases.
 */
export const inDepth = <T>(ordinary: T, deep: T): T => (process.env["TOELINE_DEEP"] ? deep : ordinary);
