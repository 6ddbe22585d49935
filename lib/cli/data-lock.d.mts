export const SETTING_UP: string;
export const SERVING: string;
export function takeLock(folder: string, name: string): Promise<(() => void) | null>;
export function lockForStart(folder: string): Promise<(() => void) | null>;
export function inUse(folder: string): string;
