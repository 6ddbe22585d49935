export function migrate(folder?: string): Promise<void>;
export function buildApp(): Promise<void>;
