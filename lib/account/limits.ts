/** How often one may try what can be guessed or flooded; each is what `makeThrottle` takes. Own estimates. */
export interface Limit {
  readonly allowed: number;
  readonly windowMs: number;
}

/** A passphrase may be got wrong this often, wherever it is asked for. */
export const passphraseLimit: Limit = { allowed: 6, windowMs: 60_000 };

/**
 * Failed sign-ins from one address, whatever the names: a class behind one address may mistype, nobody goes through a list.
 */
export const signInsByAddressLimit: Limit = { allowed: 20, windowMs: 300_000 };

/** And with one name from all addresses together: a net of machines that share the guessing. Known browsers are exempt. */
export const signInsByNameLimit: Limit = { allowed: 100, windowMs: 3_600_000 };

/** Hand-in codes that lead nowhere, from one address: a class mistypes some, a program tries thousands. */
export const codeLimit: Limit = { allowed: 30, windowMs: 600_000 };

/** A group at the bench hands in within minutes of each other; a hundred photos in ten minutes is no group. */
export const photosByCodeLimit: Limit = { allowed: 100, windowMs: 600_000 };

/** And nobody hands in a dozen beads in ten minutes: each has to be run, chipped and brushed. */
export const photosByHandLimit: Limit = { allowed: 12, windowMs: 600_000 };

/** Each reply stands in the log, so one secret address may not fill it. */
export const repliesByHandInLimit: Limit = { allowed: 6, windowMs: 60_000 };
