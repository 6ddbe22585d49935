import { z } from "zod";

/** How many welds are looked at: so many of a hundred, or so many. */
const TakeSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("share"), percent: z.number().positive().max(100) }),
  z.object({ kind: z.literal("count"), count: z.number().int().positive().max(400) }),
]);
export type SampleTake = z.infer<typeof TakeSchema>;

/** What a lot is: the welds of the whole job, of each welder, or of each part. */
export const sampleLots = ["job", "welder", "part"] as const;
export type SampleLot = (typeof sampleLots)[number];

/** Which welds were chosen to be looked at, by what plan, out of how many, and why so. */
export const SampleSchema = z.object({
  take: TakeSchema,
  lot: z.enum(sampleLots),
  /** What the choice was drawn with: whoever has it and the job's welds draws the same ones again. */
  seed: z.string().min(1).max(64),
  /** How often it was drawn until it stood: a draw that somebody repeats until it suits shows here. */
  draws: z.number().int().positive().max(1000),
  /** Ids of all welds it was drawn from, in the job's order. */
  from: z.array(z.string().max(40)).max(400),
  chosen: z.array(z.string().max(40)).max(400),
  /** Who asked for a sample: clause, contract, plan. */
  why: z.string().trim().max(200),
});
export type Sample = z.infer<typeof SampleSchema>;

interface DrawnWeld {
  readonly id: string;
  readonly partId: string | null;
  readonly welderId: string | null;
  readonly welderMark: string;
}

/** The 32-bit hash FNV-1a of a text (Fowler, Noll, Vo), then mixed so that neighbours part. */
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

function lotOf(weld: DrawnWeld, lot: SampleLot): string {
  if (lot === "part") return weld.partId ?? "";
  return lot === "welder" ? (weld.welderId ?? weld.welderMark) : "";
}

/** How many of a lot: never none, never more than there are; a share is rounded up. */
export function takenOf(size: number, take: SampleTake): number {
  // 5 % of 20 is 1, though 0.05 * 20 may be a hair more.
  const wanted = take.kind === "count" ? take.count : Math.ceil((take.percent / 100) * size - 1e-9);
  return Math.min(size, Math.max(1, wanted));
}

/**
 * The ids chosen out of these welds, in their order: of each lot so many, every weld of a lot equally likely. The same
 * seed and welds choose the same ones; who draws hands in the seed, because this room knows no chance.
 */
export function drawSample(
  welds: readonly DrawnWeld[],
  take: SampleTake,
  lot: SampleLot,
  seed: string,
): readonly string[] {
  const lots = new Map<string, { readonly id: string; readonly rank: number }[]>();
  for (const weld of welds) {
    const own = lotOf(weld, lot);
    lots.set(own, [...(lots.get(own) ?? []), { id: weld.id, rank: hash(`${seed}|${weld.id}`) }]);
  }
  const chosen = new Set(
    [...lots.values()].flatMap((members) =>
      members
        .toSorted((a, b) => a.rank - b.rank || (a.id < b.id ? -1 : 1))
        .slice(0, takenOf(members.length, take))
        .map(({ id }) => id),
    ),
  );
  return welds.map(({ id }) => id).filter((id) => chosen.has(id));
}

const lotWords: Readonly<Record<SampleLot, string>> = {
  job: "of all welds",
  welder: "of each welder’s welds",
  part: "of each part’s welds",
};

/** "5 % of each welder's welds", "2 of each part's welds". */
export const planText = (take: SampleTake, lot: SampleLot): string =>
  `${take.kind === "share" ? `${take.percent} %` : take.count} ${lotWords[lot]}`;
