/** Applies every migration the database at `url` does not have yet; returns their names. */
export function applyMigrations(url: string): Promise<string[]>;
/** What prisma/schema.prisma has that the migrations do not. `url`: a PostgreSQL to ask beside; left out, of SQLite. */
export function schemaDrift(url?: string): Promise<{ drifted: boolean; sql: string }>;
