import { imperfections as table, type ImperfectionId } from "@/lib/trade";
import { pareto, shareOf, type Share } from "@/lib/trends";

/** A bead handed in, reduced to what a class is counted by. */
export interface ClassBead {
  readonly handInId: string;
  readonly beadId: string;
  /** Who handed it in: the person's id, or what stands for somebody without one; never shown on the wall. */
  readonly student: string;
  readonly exerciseId: string;
  readonly imperfections: readonly ImperfectionId[];
  /** Something is marked, was looked for, or was answered. A bead nobody looked over is not a clean one. */
  readonly looked: boolean;
  /** The likeliest cause, where something is to be cured; null otherwise. */
  readonly cause: { readonly id: string; readonly name: string } | null;
  readonly verdict: "accept" | "reject" | "cannot-say" | null;
  readonly returned: boolean;
  /** Share of the rubric in returned feedback, 0 to 1; null: none was returned, or a line of it is open. */
  readonly score: number | null;
}

/** Scores of a class, 0 to 1; never alone, so that nobody's can be told from it on a wall of many. */
export interface ScoreSpread {
  readonly of: number;
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

export interface ClassCount {
  readonly key: string;
  readonly name: string;
  /** Beads it was on, of the beads somebody looked over. */
  readonly share: Share;
  readonly handInIds: readonly string[];
}

export interface RepeatedCause {
  readonly student: string;
  readonly causeId: string;
  readonly name: string;
  readonly times: number;
  readonly of: number;
  readonly handInIds: readonly string[];
}

export interface ClassCounts {
  readonly beads: number;
  readonly students: number;
  /** Beads somebody looked over: what every count below is of. */
  readonly looked: number;
  /** Largest first; each imperfection once a bead. */
  readonly wrong: readonly ClassCount[];
  readonly causes: readonly ClassCount[];
  readonly clean: Share;
  /** Of the beads with a yes or a no; "cannot say yet" is neither. */
  readonly meets: Share;
  /** How many of the hand-ins were answered. */
  readonly returned: number;
  /** null while no returned feedback has a whole score. */
  readonly scores: ScoreSpread | null;
  /** A cause that came first on at least two beads of one student. */
  readonly repeats: readonly RepeatedCause[];
}

type Tag = { readonly key: string; readonly name: string };

/** Every key at most once a bead, so that a bead with nine pores is one bead with porosity. */
function countsOf(
  beads: readonly ClassBead[],
  tagsOf: (bead: ClassBead) => readonly Tag[],
): readonly ClassCount[] {
  const names = new Map<string, string>();
  const tallies = beads.flatMap((bead) => {
    const tags = new Map(tagsOf(bead).map(({ key, name }) => [key, name]));
    for (const [key, name] of tags) names.set(key, name);
    return [...tags.keys()].map((key) => ({ key, beadId: bead.handInId }));
  });
  return pareto(tallies).rows.flatMap(({ key, count, beadIds }) =>
    key === null
      ? []
      : [{ key, name: names.get(key) ?? key, share: shareOf(count, beads.length), handInIds: beadIds }],
  );
}

const causeTag = ({ cause }: ClassBead): readonly Tag[] =>
  cause === null ? [] : [{ key: cause.id, name: cause.name }];

function repeatsOf(beads: readonly ClassBead[]): readonly RepeatedCause[] {
  const students = [...new Set(beads.map(({ student }) => student))];
  const found = students.flatMap((student) => {
    const own = beads.filter((bead) => bead.student === student);
    return countsOf(own, causeTag)
      .filter(({ share }) => share.count >= 2)
      .map(({ key, name, share, handInIds }) => ({
        student,
        causeId: key,
        name,
        times: share.count,
        of: share.of,
        handInIds,
      }));
  });
  return found.sort((a, b) => b.times - a.times);
}

function spreadOf(beads: readonly ClassBead[]): ScoreSpread | null {
  const scores = beads.flatMap(({ score }) => (score === null ? [] : [score]));
  if (scores.length === 0) return null;
  return {
    of: scores.length,
    mean: scores.reduce((sum, score) => sum + score, 0) / scores.length,
    least: Math.min(...scores),
    most: Math.max(...scores),
  };
}

/** A class in numbers. Nothing in it is a percentage by itself: every share carries its count and interval. */
export function classCounts(beads: readonly ClassBead[]): ClassCounts {
  const looked = beads.filter((bead) => bead.looked);
  const judged = beads.filter(({ verdict }) => verdict !== null && verdict !== "cannot-say");
  return {
    beads: beads.length,
    students: new Set(beads.map(({ student }) => student)).size,
    looked: looked.length,
    wrong: countsOf(looked, ({ imperfections }) =>
      imperfections.map((id) => ({ key: id, name: table[id].name })),
    ),
    causes: countsOf(looked, causeTag),
    clean: shareOf(looked.filter(({ imperfections }) => imperfections.length === 0).length, looked.length),
    meets: shareOf(judged.filter(({ verdict }) => verdict === "accept").length, judged.length),
    returned: beads.filter(({ returned }) => returned).length,
    scores: spreadOf(beads),
    repeats: repeatsOf(looked),
  };
}

/** From this many beads on a percentage says more than the count. */
export const ENOUGH_FOR_PERCENT = 20;

/** "3 of 7", from twenty on with its percentage; the interval always beside it. */
export function shareText({ count, of, value }: Share): string {
  const plain = `${count} of ${of}`;
  return value === null || of < ENOUGH_FOR_PERCENT ? plain : `${plain} (${Math.round(value * 100)} %)`;
}

/** "82 %, between 40 % and 100 %": the mean and the ends; of one score the score itself, and nothing of none. */
export function spreadText(scores: ScoreSpread | null): string {
  if (scores === null) return "";
  const percent = (share: number): string => `${Math.round(share * 100)} %`;
  const { of, mean, least, most } = scores;
  return of === 1 ? percent(mean) : `${percent(mean)}, between ${percent(least)} and ${percent(most)}`;
}

/** "between 16 and 75 in 100, were there many more": what so few beads say at 95 %; "" when nothing was counted. */
export function intervalText({ of, low, high }: Share): string {
  if (of === 0) return "";
  return `95 % interval ${Math.floor(low * 100)} to ${Math.ceil(high * 100)} in 100`;
}
