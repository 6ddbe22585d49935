import type { Site } from "./sites.mjs";

export class NoSite extends Error {}
export function inSite<T>(site: Site, work: () => T): T;
export function currentSite(): Site | null;
export function ofSite(key: string): string;
