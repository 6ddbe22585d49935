import { besideKinds, isWrong, type BesideKind, type BesideLine } from "./beside-study";
import { head, row } from "./tables";

const words: Readonly<Record<BesideKind, string>> = {
  single: "one bead",
  pair: "two beads",
  pass: "passes against each other",
};

/** Twelve pictures to settle rules on, and twelve kept apart, in turns. */
const isSettled = ({ n }: BesideLine): boolean => Math.floor(n / 12) % 2 === 0;

/** What looking beside what is sure makes of right and of wrong traces; one row for each kind of line. */
export function besideTable(lines: readonly BesideLine[]): string {
  const rows = [true, false].flatMap((settled) =>
    besideKinds.flatMap((kind) =>
      [false, true].flatMap((between) => {
        const mine = lines.filter(
          (one) => one.kind === kind && (one.along === "between") === between && isSettled(one) === settled,
        );
        return mine.length === 0 ? [] : [besideRow(mine, between, settled)];
      }),
    ),
  );
  return [
    head(
      "lines",
      "pictures",
      "lines",
      "wrong and sure",
      "of these no more",
      "right and sure",
      "of these no more",
    ),
    ...rows,
  ].join("\n");
}

function besideRow(mine: readonly BesideLine[], between: boolean, settled: boolean): string {
  const sure = mine.filter(({ alone }) => alone === "sure");
  const [wrong, right] = [sure.filter(isWrong), sure.filter((one) => !isWrong(one))];
  const caught = (list: readonly BesideLine[]): number => list.filter(({ now }) => now !== "sure").length;
  return row(
    `${words[mine[0]!.kind]}${between ? ", the line between them" : ""}${settled ? "; to settle on" : "; kept apart"}`,
    new Set(mine.map(({ n }) => n)).size,
    mine.length,
    wrong.length,
    caught(wrong),
    right.length,
    caught(right),
  );
}
