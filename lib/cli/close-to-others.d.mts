export function closeToOthers(folder: string): void;
