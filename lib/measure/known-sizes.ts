import type { Source } from "@/lib/base";
import { cite } from "@/lib/trade";

/** A flat thing whose size is fixed by a standard or a mint, to lay beside the weld. */
export type KnownSize =
  | {
      readonly id: string;
      readonly name: string;
      readonly kind: "rectangle";
      readonly widthMm: number;
      readonly heightMm: number;
      /** Its top lies this far above the plate; null where nothing fixes it. */
      readonly thicknessMm: number | null;
      readonly source: Source;
    }
  | {
      readonly id: string;
      readonly name: string;
      readonly kind: "disc";
      readonly diameterMm: number;
      readonly thicknessMm: number | null;
      readonly source: Source;
    };

const card = cite("iso-7810", "memory", {
  note: "size ID-1; corners round at about 3.2 mm, so it is set by its edges",
});
const mint = cite("us-coin-sizes", "seen");
const euro = cite("euro-coin-sizes", "memory");

const usCoin = (id: string, name: string, diameterMm: number, thicknessMm: number): KnownSize => ({
  id,
  name,
  kind: "disc",
  diameterMm,
  thicknessMm,
  source: mint,
});
const euroCoin = (id: string, name: string, diameterMm: number): KnownSize => ({
  id,
  name,
  kind: "disc",
  diameterMm,
  thicknessMm: null,
  source: euro,
});

/** Sizes to offer where a scale is set. A coin's rim lies its thickness above the plate; the card's edge less than 1 mm. */
export const knownSizes: readonly KnownSize[] = [
  {
    id: "id-1-card",
    name: "Card, ID-1 (85.60 x 53.98 mm)",
    kind: "rectangle",
    widthMm: 85.6,
    heightMm: 53.98,
    thicknessMm: 0.76,
    source: card,
  },
  {
    id: "a4",
    name: "Sheet, A4",
    kind: "rectangle",
    widthMm: 210,
    heightMm: 297,
    thicknessMm: null,
    source: cite("iso-216", "memory"),
  },
  {
    id: "letter",
    name: "Sheet, Letter",
    kind: "rectangle",
    widthMm: 215.9,
    heightMm: 279.4,
    thicknessMm: null,
    source: cite("ansi-asme-y14-1", "memory"),
  },
  usCoin("us-1c", "US cent", 19.05, 1.52),
  usCoin("us-5c", "US nickel", 21.21, 1.95),
  usCoin("us-10c", "US dime", 17.91, 1.35),
  usCoin("us-25c", "US quarter", 24.26, 1.75),
  usCoin("us-50c", "US half dollar", 30.61, 2.15),
  usCoin("us-1d", "US dollar coin", 26.49, 2),
  euroCoin("eur-1", "1 euro", 23.25),
  euroCoin("eur-2", "2 euro", 25.75),
  euroCoin("eur-50c", "50 cent (euro)", 24.25),
  euroCoin("eur-20c", "20 cent (euro)", 22.25),
  euroCoin("eur-10c", "10 cent (euro)", 19.75),
  euroCoin("eur-5c", "5 cent (euro)", 21.25),
  euroCoin("eur-2c", "2 cent (euro)", 18.75),
  { ...euroCoin("eur-1c", "1 cent (euro)", 16.25), source: cite("euro-coin-sizes", "seen") },
];
