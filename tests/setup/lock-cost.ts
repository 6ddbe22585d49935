/**
 * In place of lib/keys/lock-cost.ts in the ordinary run: boxes are opened by the hundred there, and what is proved of them
 * holds at any cost. The cost itself, and boxes locked at it, are the affair of locked-box.test.ts and of the deep run.
 */
export const LOCK_COST = { N: 1024, r: 8, p: 1 } as const;
