export function migrateAside(folder: string): Promise<string[]>;
