/**
 * How long a test waits for what must come: long enough for a machine that is busy with something else. It is no measure
 * of speed; what must be quick is compared with a named baseline in the same run.
 */
export const PATIENT_MS = 300_000;
