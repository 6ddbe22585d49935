export function deadWood(root?: string): Promise<readonly string[] | null>;
