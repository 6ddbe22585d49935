import type { Site } from "./sites.mjs";

export function hostName(value: string): string | null;
export function valuesOf(rawHeaders: readonly string[], wanted: string): readonly string[];
export function siteOfRequest(
  sites: readonly Site[],
  request: { readonly url: string; readonly rawHeaders: readonly string[] },
  trustsProxy: boolean,
): { readonly site: Site; readonly host: string } | null;
