/** 32 MB and about a fifth of a second each time; one of the settings OWASP's cheat sheet gives (from memory). */
export const LOCK_COST = { N: 2 ** 15, r: 8, p: 3 } as const;
