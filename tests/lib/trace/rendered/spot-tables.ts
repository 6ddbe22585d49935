import { ASKED_PX, BOXES, type SpotLine, type StudiedSpot } from "./spot-study";
import { spotKinds, type SpotKind } from "./spot-pictures";

type Way = SpotLine["by"];
type What = StudiedSpot[0];

/** How many of what is suggested must be right on the pictures that the level is settled on; well above what is asked of it. */
const CALIBRATED_PRECISION = 0.95;
const CLASSES = [
  [ASKED_PX, 14],
  [14, 22],
  [22, Infinity],
] as const;

export interface SpotFigures {
  readonly pictures: number;
  readonly asked: number;
  readonly suggested: number;
  readonly precision: number;
  readonly recall: number;
  /** The same of as many boxes of the same sizes laid at random. */
  readonly boxPrecision: number;
  readonly boxRecall: number;
}

/** Figures of some lines for one kind of spot, of what is as sure as `from`, by size as true and as said. */
export function spotFigures(
  lines: readonly SpotLine[],
  what: What,
  from: number,
  [least, most]: readonly [number, number] = [ASKED_PX, Infinity],
): SpotFigures {
  const [sum, add] = summing();
  for (const { truths, found } of lines) {
    const isAsked = (i: number): boolean => {
      const truth = truths[i];
      return (
        truth !== undefined && truth[0] === what && truth[2] === 1 && truth[1] >= least && truth[1] < most
      );
    };
    add("asked", truths.filter((_, i) => isAsked(i)).length);
    for (const [kind, sure, across, truth, boxesRight, boxesAsked] of found) {
      if (kind !== what || sure < from) continue;
      if (isAsked(truth)) add("recalled", 1);
      add("boxesAsked", boxesAsked / BOXES);
      if (across < least || across >= most) continue;
      add("suggested", 1);
      add("right", truth >= 0 ? 1 : 0);
      add("boxesRight", boxesRight / BOXES);
    }
  }
  const { asked = 0, recalled = 0, suggested = 0, right = 0, boxesRight = 0, boxesAsked = 0 } = sum;
  return {
    pictures: lines.length,
    asked,
    suggested,
    precision: right / suggested,
    recall: recalled / asked,
    boxPrecision: boxesRight / suggested,
    boxRecall: boxesAsked / asked,
  };
}

function summing(): readonly [Record<string, number>, (name: string, by: number) => void] {
  const sum: Record<string, number> = {};
  return [sum, (name, by) => void (sum[name] = (sum[name] ?? 0) + by)];
}

/** The lowest level from which on suggestions hold on the calibration's pictures; null: there is none. */
export function calibrated(lines: readonly SpotLine[], what: What): number | null {
  const own = lines.filter(({ kind }) => kind === "calibration");
  for (let from = 0.1; from < 0.99; from += 0.01) {
    const { suggested, precision } = spotFigures(own, what, from);
    if (suggested >= 20 && precision >= CALIBRATED_PRECISION) return Math.round(100 * from) / 100;
  }
  return null;
}

/** Where none holds: the level of the best F-score (van Rijsbergen 1979) on the calibration's pictures. */
function bestLevel(lines: readonly SpotLine[], what: What): number {
  const own = lines.filter(({ kind }) => kind === "calibration");
  const levels = Array.from({ length: 45 }, (_, i) => (10 + 2 * i) / 100);
  const score = (from: number): number => {
    const { precision, recall } = spotFigures(own, what, from);
    return precision * recall === 0 ? 0 : (2 * precision * recall) / (precision + recall) || 0;
  };
  return levels.reduce((best, from) => (score(from) > score(best) ? from : best));
}

const percent = (share: number): string => (Number.isNaN(share) ? "-" : `${(100 * share).toFixed(0)} %`);
const row = (...cells: readonly (string | number)[]): string => `| ${cells.join(" | ")} |`;
const head = (...cells: readonly string[]): string => `${row(...cells)}\n${row(...cells.map(() => "---"))}`;

/** Recall and precision beside boxes at random, for each way of looking, kind of picture and of spot, and by size. */
export function spotTables(lines: readonly SpotLine[], today: string): string {
  const ways = [...new Set(lines.map(({ by }) => by))];
  return [
    `Holes and spatter of ${ASKED_PX} pixels and more as read, ${today}. Renders, not photographs; truth is where the generator put them.`,
    ...ways.flatMap((way) => ["", `By the ${way} way:`, "", ...wayRows(lines, way)]),
  ].join("\n");
}

function wayRows(all: readonly SpotLine[], way: Way): string[] {
  const lines = all.filter(({ by, refused }) => by === way && refused === null);
  const levels = (["hole", "spatter"] as const).map(
    (what) => [what, calibrated(lines, what) ?? bestLevel(lines, what)] as const,
  );
  const rows = [
    head(
      "pictures",
      "read",
      "what",
      "sure from",
      "asked for",
      "suggested",
      "recall",
      "precision",
      "boxes at random: recall",
      "precision",
    ),
  ];
  const classes = [
    head(
      "never trained on, across",
      "what",
      "asked for",
      "suggested",
      "recall",
      "precision",
      "boxes: precision",
    ),
  ];
  for (const [what, from] of levels) {
    for (const kind of spotKinds) rows.push(kindRow(all, lines, way, kind, what, from));
    const kept = lines.filter(({ kind }) => kind !== "calibration");
    for (const size of CLASSES) {
      const f = spotFigures(kept, what, from, size);
      const name = size[1] === Infinity ? `${size[0]} px and more` : `${size[0]} to ${size[1]} px`;
      classes.push(
        row(
          name,
          what,
          f.asked,
          f.suggested,
          percent(f.recall),
          percent(f.precision),
          percent(f.boxPrecision),
        ),
      );
    }
  }
  return [...rows, "", ...classes];
}

function kindRow(
  all: readonly SpotLine[],
  lines: readonly SpotLine[],
  way: Way,
  kind: SpotKind,
  what: What,
  from: number,
): string {
  const f = spotFigures(
    lines.filter((line) => line.kind === kind),
    what,
    from,
  );
  const asked = all.filter((line) => line.by === way && line.kind === kind).length;
  const shares = [f.recall, f.precision, f.boxRecall, f.boxPrecision].map(percent);
  return row(kind, `${f.pictures} of ${asked}`, what, from, f.asked, f.suggested, ...shares);
}
