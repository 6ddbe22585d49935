import { saveShopSet } from "@/lib/shop";
import type { Pen } from "@/lib/store";
import { shopSetId } from "@/lib/accept";
import { crackIds } from "@/lib/trade";
import { made } from "./made";

/** How the demo's beads name the limits below. */
export const DEMO_LIMITS_ID = "shop-first-beads@1";

const seen = { windowMm: null, ofThickness: null, note: "" } as const;
const stretchMm = 100;

/** Invented limits of the invented shop, for first beads on scrap. No code stands behind them. */
const firstBeads = {
  title: "First beads",
  note: "For practice on scrap: what a first bead should be free of before the next exercise.",
  rows: [
    {
      ...seen,
      id: "never",
      title: "Never",
      imperfections: [...crackIds, "crater-pipe", "overlap", "lack-of-fusion", "burn-through", "arc-strike"],
      quantity: "none-allowed",
      limit: null,
    },
    {
      ...seen,
      id: "undercut",
      title: "Undercut",
      imperfections: ["undercut"],
      quantity: "total-length",
      limit: 20,
      windowMm: stretchMm,
    },
    {
      ...seen,
      id: "pores",
      title: "Pores",
      imperfections: ["surface-porosity", "wormhole"],
      quantity: "count",
      limit: 2,
      windowMm: stretchMm,
    },
    {
      ...seen,
      id: "shape",
      title: "Shape of the bead",
      imperfections: ["convex-bead", "uneven-width", "poor-start"],
      quantity: "none-allowed",
      limit: null,
      note: "Run it again until ripples and edges are even from start to crater.",
    },
  ],
};

export async function addDemoLimits(pen: Pen): Promise<void> {
  const { key, version } = made(await saveShopSet(pen, null, 0, firstBeads, "instructor"));
  if (shopSetId({ id: key, version }) !== DEMO_LIMITS_ID)
    throw new Error(`the demo's limits are ${key}@${version}, not ${DEMO_LIMITS_ID}`);
}
