import { z } from "zod";
import { imperfectionIds, type ImperfectionId } from "@/lib/trade";
import { isAskedFor, sizeMm, type EyeBead, type EyeFault } from "./eye-bead";
import { outlineDistance } from "./outline-distance";

/** One mark of whoever looks: where, what, and how large they think it is. */
export const EyeMarkSchema = z.object({
  at: z.object({ x: z.number().min(-1e4).max(2e4), y: z.number().min(-1e4).max(2e4) }),
  kind: z.enum(imperfectionIds),
  sizeMm: z.number().min(0).max(2000).nullable(),
});
export type EyeMark = z.infer<typeof EyeMarkSchema>;

export const EyeAnswerSchema = z.object({
  beadId: z.string().max(80),
  marks: z.array(EyeMarkSchema).max(60),
  /** Whether anything on it fails the level; null: not said. */
  fails: z.boolean().nullable(),
});
export type EyeAnswer = z.infer<typeof EyeAnswerSchema>;

export interface EyeScore {
  /** Kinds that were there and marked by their name. */
  readonly found: readonly ImperfectionId[];
  /** Kinds that were there, where nobody pointed. */
  readonly missed: readonly ImperfectionId[];
  /** Pointed at, called something else. */
  readonly misnamed: readonly { readonly is: ImperfectionId; readonly called: ImperfectionId }[];
  /** Named where nothing is. */
  readonly falseCalls: readonly ImperfectionId[];
  /** Found, and the size is further off than it may be. */
  readonly missized: readonly {
    readonly kind: ImperfectionId;
    readonly isMm: number;
    readonly saidMm: number;
  }[];
}

/** Share of the picture's width that a fingertip may be off. Own estimate. */
const REACH = 0.02;
/** A size by eye may be off by this share, and by a millimetre. Own estimate: nobody holds a gauge to a screen. */
const SIZE_SHARE = 0.35;
const SIZE_MM = 1;

const near = (bead: EyeBead, mark: EyeMark, fault: EyeFault): boolean =>
  outlineDistance(mark.at, fault.outlinePx) <= REACH * bead.widthPx;

/** What a mark points at: its own kind where that is there, else the nearest spot; the bead's whole shape catches nothing. */
function pointedAt(bead: EyeBead, mark: EyeMark): EyeFault | null {
  const under = bead.faults.filter((fault) => near(bead, mark, fault));
  const own = under.find(({ kind }) => kind === mark.kind);
  if (own) return own;
  const spots = under.filter((fault) => !fault.whole && isAskedFor(fault));
  return (
    spots.toSorted(
      (a, b) => outlineDistance(mark.at, a.outlinePx) - outlineDistance(mark.at, b.outlinePx),
    )[0] ?? null
  );
}

/** Against the one of the kind that comes nearest to what was said: which of several they meant nobody knows. */
function sizeOff(bead: EyeBead, { kind, sizeMm: saidMm }: EyeMark): { isMm: number } | null {
  if (saidMm === null) return null;
  const sizes = bead.faults.filter((fault) => fault.kind === kind).flatMap((fault) => sizeMm(fault) ?? []);
  const isMm = sizes.toSorted((a, b) => Math.abs(a - saidMm) - Math.abs(b - saidMm))[0];
  if (isMm === undefined || Math.abs(saidMm - isMm) <= Math.max(SIZE_MM, SIZE_SHARE * isMm)) return null;
  return { isMm };
}

const once = <T>(items: readonly T[]): readonly T[] => [...new Set(items)];

/**
 * What somebody saw on a bead against what is there. Each kind counts once a bead: twenty pores are one porosity, and twenty
 * marks on them are one find.
 */
export function scoreBead(bead: EyeBead, { marks }: Pick<EyeAnswer, "marks">): EyeScore {
  const pointed = marks.map((mark) => ({ mark, fault: pointedAt(bead, mark) }));
  const found = once(pointed.flatMap(({ mark, fault }) => (fault?.kind === mark.kind ? [mark.kind] : [])));
  const asked = once(bead.faults.filter(isAskedFor).map(({ kind }) => kind));
  const wrong = pointed.flatMap(({ mark, fault }) =>
    fault && fault.kind !== mark.kind && !found.includes(fault.kind)
      ? [{ is: fault.kind, called: mark.kind }]
      : [],
  );
  const misnamed = wrong.filter(
    ({ is, called }, i) => wrong.findIndex((one) => one.is === is && one.called === called) === i,
  );
  return {
    found,
    missed: asked.filter((kind) => !found.includes(kind) && !misnamed.some(({ is }) => is === kind)),
    misnamed,
    falseCalls: once(pointed.flatMap(({ mark, fault }) => (fault === null ? [mark.kind] : []))),
    missized: marks.flatMap((mark) => {
      const off = found.includes(mark.kind) ? sizeOff(bead, mark) : null;
      return off && mark.sizeMm !== null ? [{ kind: mark.kind, isMm: off.isMm, saidMm: mark.sizeMm }] : [];
    }),
  };
}
