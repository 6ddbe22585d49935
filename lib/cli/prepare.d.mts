export function migrate(folder?: string): Promise<void>;
