import { intervalText, shareText, spreadText, type ClassCount, type ClassCounts } from "./class-counts";

export interface WallRow {
  readonly name: string;
  /** "3 of 7" */
  readonly count: string;
  readonly interval: string;
  /** Length of the bar, 0 to 1. */
  readonly share: number;
}

/** One page for the wall: words and numbers of a class, and nobody's name. */
export interface WallContent {
  readonly title: string;
  readonly group: string;
  readonly aim: string;
  readonly day: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly wrong: readonly WallRow[];
  readonly causes: readonly WallRow[];
  readonly foot: string;
}

/** More rows than this are not read from across the bay. */
const MOST_ROWS = 8;

const row = ({ name, share }: ClassCount): WallRow => ({
  name,
  count: shareText(share),
  interval: intervalText(share),
  share: share.value ?? 0,
});

export function wallPage(
  counts: ClassCounts,
  about: Pick<WallContent, "title" | "group" | "aim" | "day"> & {
    readonly handedIn: number;
    readonly members: number;
  },
): WallContent {
  const { handedIn, members, ...head } = about;
  return {
    ...head,
    facts: [
      { label: "Handed in, of the group", value: `${handedIn} of ${members}` },
      { label: "Beads looked over, of those handed in", value: `${counts.looked} of ${counts.beads}` },
      { label: "Feedback returned, of those handed in", value: `${counts.returned} of ${counts.beads}` },
      { label: "Looked over, nothing found", value: shareText(counts.clean) },
      // One score alone would be somebody's.
      ...(counts.scores !== null && counts.scores.of > 1
        ? [{ label: `Mean score by the rubric, of ${counts.scores.of}`, value: spreadText(counts.scores) }]
        : []),
      ...(counts.meets.of > 0
        ? [{ label: "Meets its criteria, of those with a verdict", value: shareText(counts.meets) }]
        : []),
    ],
    wrong: counts.wrong.slice(0, MOST_ROWS).map(row),
    causes: counts.causes.slice(0, MOST_ROWS).map(row),
    foot: "Counts of beads looked over. The interval says what so few beads can say about many more (95 %, Wilson 1927).",
  };
}
