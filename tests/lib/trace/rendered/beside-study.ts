import type { Pixel } from "@/demo-images";
import type { Point } from "@/lib/geometry";
import type { Result } from "@/lib/base";
import {
  isGuess,
  reader,
  traceBead,
  type Pixels,
  type ReadStrip,
  type Trace,
  type TraceIssue,
} from "@/lib/trace";
import { usuallySure } from "@/lib/trace/sure";
import { traceAlone } from "@/lib/trace/trace-bead";
import { severalBeads, type Sight } from "./passes";
import { picks, tracePicture } from "./pictures";
import { errorsAt } from "./study-picture";

export const besideKinds = ["single", "pair", "pass"] as const;
export type BesideKind = (typeof besideKinds)[number];

/** A width is stated of what is sure, and none of a guess. */
export type Said = "sure" | "guess" | "refused";

/** What was said along one line. */
export interface BesideLine {
  readonly kind: BesideKind;
  readonly n: number;
  readonly scenario: string;
  /** "between" two beads, or along the bead of this number in the order laid. */
  readonly along: number | "between";
  /** Were what the reader is sure of looked at alone, and as it is. */
  readonly alone: Said;
  readonly now: Said;
  /** Share of the stations at which a toe lies off by a quarter of the width from the one bead that fits best; 1 if refused. */
  readonly off: number;
}

const OFF_WIDTHS = 0.25;
/** A trace of which a larger share lies off is none of any bead. */
const MOST_OFF = 0.25;

export const isWrong = ({ off }: BesideLine): boolean => off > MOST_OFF;

/** The lines of one picture; none where there is no such picture. */
export async function besideLines(
  kind: BesideKind,
  n: number,
  read: ReadStrip,
): Promise<readonly BesideLine[]> {
  const asked = askedOf(kind, n);
  if (asked === null) return [];
  const { scenario, image, beads, lines } = asked;
  const out: BesideLine[] = [];
  for (const { along, line } of lines) {
    const [alone, looked] = [await traceAlone(image, line, read), await traceBead(image, line, read)];
    const now = saidOf(looked);
    const sure = alone.ok && usuallySure(alone.value) >= reader.usualSure;
    const off = alone.ok ? Math.min(...beads.map((bead) => offShare(alone.value, bead))) : 1;
    out.push({ kind, n, scenario, along, alone: sure ? "sure" : now, now, off });
  }
  return out;
}

const saidOf = (trace: Result<Trace, TraceIssue>): Said =>
  !trace.ok ? "refused" : isGuess(trace.value.stations) ? "guess" : "sure";

interface AskedLines {
  readonly scenario: string;
  readonly image: Pixels;
  readonly beads: readonly Sight[];
  readonly lines: readonly { along: number | "between"; line: readonly Point<"photo">[] }[];
}

function askedOf(kind: BesideKind, n: number): AskedLines | null {
  if (kind === "single") {
    const { scenario, image, beads, left, right, picked } = tracePicture("fresh-kept", n);
    return beads > 1 || picked === null
      ? null
      : { scenario, image, beads: [[left, right]], lines: [{ along: 0, line: picked }] };
  }
  const picture = severalBeads(kind, n);
  if (picture === null) return null;
  const { scenario, image, passes } = picture;
  const beads = passes.filter((one) => one !== null);
  const lines = passes.flatMap((one, along) => {
    const line = one && picks(...abreast(one), image.width, image.height, 100 * n + along);
    return line === null ? [] : [{ along: along as number | "between", line }];
  });
  const betweens = kind === "pair" ? between(beads, image) : [];
  return {
    scenario,
    image,
    beads,
    lines: [...lines, ...betweens.map((line) => ({ along: "between" as const, line }))],
  };
}

/** Both toes with as many places, each against the nearest of the other that is no end of it. */
function abreast([left, right]: Sight): Sight {
  const pairs = left.flatMap((at): (readonly [Pixel, Pixel])[] => {
    const far = right.map(([x, y]) => Math.hypot(x - at[0], y - at[1]));
    const best = far.indexOf(Math.min(...far));
    return best <= 0 || best >= right.length - 1 ? [] : [[at, right[best]!]];
  });
  return [pairs.map(([at]) => at), pairs.map(([, at]) => at)];
}

/** Where lines between two beads are laid, shares of the way from the one middle to the other. */
const SHARES = [0.4, 0.5, 0.6] as const;

/** From end to end between what is in the picture of two beads; none where there is too little of one. */
function between(beads: readonly Sight[], { width, height }: Pixels): readonly (readonly Point<"photo">[])[] {
  const [mine, other] = beads.map((one) => {
    const [left, right] = abreast(one);
    return left
      .map(([x, y], i) => ({ x: (x + right[i]![0]) / 2, y: (y + right[i]![1]) / 2 }))
      .filter(({ x, y }) => x > 0 && y > 0 && x < width && y < height);
  });
  if (mine === undefined || other === undefined || mine.length < 12 || other.length < 8) return [];
  return SHARES.map((share) =>
    [0, 1].map((end) => {
      const [a, b] = [mine, other].map((one) => one[end * (one.length - 1)]!);
      return { x: a!.x + (b!.x - a!.x) * share, y: a!.y + (b!.y - a!.y) * share };
    }),
  );
}

/** 1 where hardly any of the trace lies abreast of that bead. */
function offShare({ stations, widthPx }: Trace, [left, right]: Sight): number {
  const inner = stations.filter(({ end }) => !end);
  const errors = inner.map((station) => errorsAt(station, left, right)).filter((one) => one !== null);
  if (errors.length < inner.length / 2 || errors.length === 0) return 1;
  return (
    errors.filter((both) => both.some((one) => Math.abs(one) > OFF_WIDTHS * widthPx)).length / errors.length
  );
}
