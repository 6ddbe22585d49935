import { cite, withoutDocument } from "@/lib/trade";
import type { Steel } from "./steel";

/** IIW, as EN 1011-2 method A and AWS D1.1 use it. */
export function iiwPercent(s: Steel): number {
  return (
    s.carbonPercent +
    s.manganesePercent / 6 +
    (s.chromiumPercent + s.molybdenumPercent + s.vanadiumPercent) / 5 +
    (s.nickelPercent + s.copperPercent) / 15
  );
}

/** CET, as EN 1011-2 method B uses it. */
export function cetPercent(s: Steel): number {
  return (
    s.carbonPercent +
    (s.manganesePercent + s.molybdenumPercent) / 10 +
    (s.chromiumPercent + s.copperPercent) / 20 +
    s.nickelPercent / 40
  );
}

/** Pcm, by Ito and Bessyo; D1.1's hydrogen-control annex goes by it. */
export function pcmPercent(s: Steel): number {
  return (
    s.carbonPercent +
    s.siliconPercent / 30 +
    (s.manganesePercent + s.copperPercent + s.chromiumPercent) / 20 +
    s.nickelPercent / 60 +
    s.molybdenumPercent / 15 +
    s.vanadiumPercent / 10 +
    5 * s.boronPercent
  );
}

export const carbonSources = {
  iiw: withoutDocument("carbon equivalent of the IIW, from memory", "memory"),
  cet: cite("en-1011-2", "memory", { clause: "method B" }),
  pcm: withoutDocument("Pcm of Ito and Bessyo, from memory", "memory"),
} as const;
