import { cohenKappa, fleissKappa, type Kappa } from "@/lib/numeric";
import { shareOf, type Share } from "@/lib/trends";

/** What people said of the same beads, bad or good, each as often as each other, and what is so. */
export interface StudyInput {
  /** By bead: true where it fails. */
  readonly truth: readonly boolean[];
  /** By person, bead, try. */
  readonly people: readonly { readonly name: string; readonly said: readonly (readonly boolean[])[] }[];
}

export interface PersonStudy {
  readonly name: string;
  /** Beads of which all tries say what is so; interval by Clopper and Pearson. */
  readonly right: Share;
  /** Beads of which all tries say the same, right or wrong. */
  readonly steady: Share;
  /** Tries that pass a bead that fails, of all on such beads. */
  readonly misses: Share;
  /** Tries that fail a bead that is good, of all on such beads. */
  readonly falseAlarms: Share;
  readonly withTruth: Kappa;
}

export interface AttributeStudy {
  readonly people: readonly PersonStudy[];
  readonly pairs: readonly { readonly one: string; readonly other: string; readonly kappa: Kappa }[];
  /** All people, first tries; null for fewer than two. */
  readonly together: Kappa | null;
}

/** Two-by-two table of two rows of answers, fails first. */
function crossed(one: readonly boolean[], other: readonly boolean[]): readonly (readonly number[])[] {
  const count = (a: boolean, b: boolean): number =>
    one.filter((said, i) => said === a && other[i] === b).length;
  return [
    [count(true, true), count(true, false)],
    [count(false, true), count(false, false)],
  ];
}

const triesOf = (truth: readonly boolean[], said: readonly (readonly boolean[])[]): readonly boolean[] =>
  said.flatMap((tries, i) => tries.map(() => truth[i] ?? false));

function personStudy(truth: readonly boolean[], { name, said }: StudyInput["people"][number]): PersonStudy {
  const of = (count: number, all: number): Share => shareOf(count, all, "clopper-pearson");
  const [tries, so] = [said.flat(), triesOf(truth, said)];
  const bad = so.filter(Boolean).length;
  return {
    name,
    right: of(said.filter((one, i) => one.every((fails) => fails === truth[i])).length, said.length),
    steady: of(said.filter((one) => one.every((fails) => fails === one[0])).length, said.length),
    misses: of(tries.filter((fails, i) => so[i] && !fails).length, bad),
    falseAlarms: of(tries.filter((fails, i) => !so[i] && fails).length, so.length - bad),
    withTruth: cohenKappa(crossed(tries, so)),
  };
}

/**
 * A study of attributes: how right, how steady and how alike people are on the same beads. Tries of one bead are no
 * independent looks, so intervals of kappas are somewhat too narrow where there is more than one try.
 */
export function attributeStudy({ truth, people }: StudyInput): AttributeStudy {
  const pairs = people.flatMap((one, i) =>
    people.slice(i + 1).map((other) => ({
      one: one.name,
      other: other.name,
      kappa: cohenKappa(crossed(one.said.flat(), other.said.flat())),
    })),
  );
  const counts = truth.map((_, i) => {
    const bad = people.filter(({ said }) => said[i]?.[0]).length;
    return [bad, people.length - bad];
  });
  return {
    people: people.map((one) => personStudy(truth, one)),
    pairs,
    together: people.length < 2 ? null : fleissKappa(counts),
  };
}
