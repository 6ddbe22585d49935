/** Creates a data folder when missing and brings its database, or the one at `url`, to the newest migration. */
/** Fills an empty database with the demo shop. */
export function fillDemo(folder?: string): void;
export function migrate(folder?: string, url?: string | null): Promise<void>;
export function buildApp(): Promise<void>;
