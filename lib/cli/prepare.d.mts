/** Creates a data folder when missing and brings its database, or the one at `url`, to the newest migration. */
export function migrate(folder?: string, url?: string | null): Promise<void>;
export function buildApp(): Promise<void>;
