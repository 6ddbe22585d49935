import {
  becauseLine,
  CHECK_YOUR_COPY,
  expectLine,
  WIDTH_NOTE,
  type LabelledRow,
  type SheetCause,
  type SheetDocument,
} from "@/lib/report";
import { asDecoration } from "./flow";
import { foldClauses } from "./fold-clauses";
import { layText, piecesWidth, run, type Run } from "./lay-text";
import { GREY, ONE_PAGE, RULE } from "./page";
import { beside, framed, heading, stack, table, words, type Piece, type Setting } from "./piece";

/** A width to set to, and the size of what is read, points. */
export interface Sized extends Setting {
  readonly size: number;
  /** What usually has a line of its own stands one after the other. */
  readonly isClose: boolean;
}

/** Nothing on the sheet is smaller: sources, origins, what stands beside a figure. */
export const FINE = 7.5;
const PAIR_GAP = 14;
/** From this width on, what was set stands in two columns. */
const TWO_COLUMNS = 290;

const grey = (text: string, size = FINE): Run => run(text, "text", size, GREY.words);
const plainRun = (text: string, { size }: Sized): Run => run(text, "text", size);
const strongRun = (text: string, { size }: Sized): Run => run(text, "strong", size);
const paragraph = (set: Sized, text: string): Piece => words(set, text === "" ? [] : [plainRun(text, set)]);

function pairs(set: Sized, rows: readonly LabelledRow[], most: number): Piece {
  const { flow, size, width } = set;
  const longest = Math.max(0, ...rows.map(({ label }) => flow.faces.width(label, "text latin", size)));
  const share = Math.min(most, (longest + 8) / width);
  const cells = rows.map((row) => [[run(row.label, "text", size, GREY.words)], [strongRun(row.value, set)]]);
  return table(set, [{ share, headsRow: true }, { share: 1 - share }], cells);
}

/** Labels and values; on a wide column in two, broken where both come out about as high. */
function labelled(set: Sized, rows: readonly LabelledRow[]): Piece {
  if (set.width < TWO_COLUMNS) return pairs(set, rows, 0.36);
  const half = { ...set, width: (set.width - PAIR_GAP) / 2 };
  const breaks = [0, 1, 2].map((more) => Math.ceil(rows.length / 2) + 1 - more);
  const both = breaks.map((at) =>
    beside([
      { piece: pairs(half, rows.slice(0, at), 0.42), x: 0 },
      { piece: pairs(half, rows.slice(at), 0.42), x: half.width + PAIR_GAP },
    ]),
  );
  return both.reduce((best, one) => (one.height < best.height ? one : best));
}

export function setupPiece(set: Sized, { setup, setupFindings }: SheetDocument): Piece {
  const rows = set.isClose ? runIn(set, setup) : labelled(set, setup);
  return stack(
    [
      heading(set, "How it was run"),
      setup.length === 0 ? paragraph(set, "Not recorded.") : rows,
      ...setupFindings.map((line) => paragraph(set, `• ${line}`)),
    ],
    3,
  );
}

/** Labels and values one after the other, where there is no room for a line each. */
const runIn = (set: Sized, rows: readonly LabelledRow[]): Piece =>
  words(
    set,
    rows.flatMap(({ label, value }, i) => [
      run(`${label} `, "text", set.size, GREY.words),
      strongRun(`${value}${i < rows.length - 1 ? "; " : "."}`, set),
    ]),
  );

/** A mark's name and number with its place below it, its size beside both. */
export function marksPiece(set: Sized, { marks }: SheetDocument): Piece {
  if (marks.length === 0) return stack([heading(set, "What is there"), paragraph(set, "Nothing marked.")], 3);
  const cells = marks.map((mark): readonly (readonly Run[])[] => [
    [strongRun(mark.numbers, set)],
    [
      strongRun(mark.name, set),
      plainRun(`${mark.iso6520 ? ` (${mark.iso6520})` : ""}\n${mark.place}`, set),
      ...(mark.note === "" ? [] : [run(`\n${mark.note}`, "text", set.size, GREY.words)]),
    ],
    [plainRun(mark.size, set)],
  ]);
  const number = (3.9 * set.size) / set.width;
  const columns = [
    { title: "Mark", share: number },
    { title: "Imperfection (ISO 6520-1), where", share: 0.66 - number },
    { title: "Size", share: 0.34 },
  ];
  return stack([heading(set, "What is there"), table(set, columns, cells)], 2);
}

export function widthsPiece(set: Sized, { photos }: SheetDocument): Piece {
  const pieces = photos.flatMap(({ width }) =>
    width ? [heading(set, "Width of the bead"), pairs(set, width, 0.6), words(set, [grey(WIDTH_NOTE)])] : [],
  );
  return stack(pieces, 3);
}

const BAR = 8;
const PAD = 7;

/** The one change to try, in a box that is seen from across the bench. */
export function changePiece(set: Sized, { change, nextChanges }: SheetDocument): Piece {
  if (!change) return stack([], 0);
  const inner = { ...set, width: set.width - BAR - 2 * PAD - 4 };
  const sentence = change.step === "" ? change.sentence : `${change.sentence} ${change.step}.`;
  const because = [becauseLine(change), ...change.reasons].join(" ");
  const later = `Only if that does not cure it: ${nextChanges.join(" Then: ")}`;
  const told = stack(
    [
      words(inner, [run("Change this one thing", "heavy", 11)], { type: "H2", leading: 1.1 }),
      words(inner, [run(sentence, "heavy", 16)], { leading: 1.1 }),
      paragraph(inner, because),
      paragraph(inner, expectLine(change)),
      ...(nextChanges.length > 0 ? [paragraph(inner, later)] : []),
    ],
    2,
  );
  return framed(set, told, { bar: BAR, pad: PAD });
}

const METER = 4.5;

/** How much speaks for a cause, as a bar; the words say it too. */
function meter({ flow, width }: Setting, share: number): Piece {
  return {
    height: METER,
    draw: (x, y) =>
      asDecoration(flow.doc, () => {
        flow.doc.lineWidth(RULE.hair).strokeColor(flow.ink).lineJoin("miter").undash();
        flow.doc.rect(x, y, width, METER).stroke();
        flow.doc.rect(x, y, width * Math.max(0.01, share), METER).fill(flow.ink);
      }),
  };
}

function causePiece(set: Sized, cause: SheetCause, rank: number): Piece {
  const line = (sign: string) => (text: string) =>
    words(set, [strongRun(`${sign} `, set), plainRun(text, set)]);
  const name = [run(`${rank + 1}. ${cause.name} `, "heavy", set.size + 2), plainRun(cause.chance, set)];
  return stack(
    [
      words(set, name, { type: "H3", leading: 1.15 }),
      meter(set, cause.probability),
      ...cause.speaksFor.map(line("+")),
      ...cause.speaksAgainst.map(line("−")),
    ],
    1.5,
  );
}

export function causesPiece(set: Sized, { causes, causeless, origin }: SheetDocument): Piece {
  return stack(
    [
      heading(set, "Likely causes"),
      ...causes.map((cause, rank) => causePiece(set, cause, rank)),
      ...causeless.map((line) => paragraph(set, line)),
      words(set, [grey(origin === "" ? "None named." : origin)]),
    ],
    4,
  );
}

type SheetVerdict = NonNullable<SheetDocument["verdict"]>;

/** What the verdict still wants and rests on, in one paragraph. */
function verdictRuns(set: Sized, verdict: SheetVerdict): readonly Run[] {
  const { missing, notLookedFor } = verdict;
  const sentences = [
    verdict.long,
    verdict.checkYourCopy ? CHECK_YOUR_COPY : "",
    ...verdict.contradictions,
    verdict.notCarried,
    verdict.unused,
  ].filter(Boolean);
  const led = (lead: string, rest: string) => [strongRun(` ${lead}: `, set), plainRun(rest, set)];
  return [
    plainRun(sentences.join(" "), set),
    ...(missing.length > 0 ? led("Missing", `${missing.join("; ")}.`) : []),
    ...(notLookedFor.length > 0 ? led("Not looked for", `${notLookedFor.join(", ")}.`) : []),
  ];
}

const ended = (text: string): string => (text.endsWith(".") ? text : `${text}.`);

export function verdictPiece(set: Sized, { verdict }: SheetDocument): Piece {
  if (!verdict) return stack([heading(set, "Verdict"), paragraph(set, "No criteria chosen.")], 3);
  const clauses = verdict.clauses.map((row): readonly Run[] => [
    strongRun(`${row.title}: `, set),
    plainRun(row.detail, set),
    grey(` ${ended(foldClauses(row.clause))}${row.checkYourCopy ? " Check your copy." : ""}`),
  ]);
  const results = verdict.clauses.map(({ result }) => strongRun(result, set));
  const share = Math.min(0.3, (5.2 * set.size) / set.width);
  const [columns, cells] = set.isClose
    ? [
        [{ title: "Result, clause and its source", share: 1 }],
        clauses.map((runs, i) => [[run(`${verdict.clauses[i]?.result} · `, "heavy", set.size), ...runs]]),
      ]
    : [
        [
          { title: "Result", share },
          { title: "Clause and its source", share: 1 - share },
        ],
        clauses.map((runs, i) => [results.slice(i, i + 1), runs]),
      ];
  return stack(
    [
      heading(set, `Verdict: ${verdict.word}`),
      words(set, verdictRuns(set, verdict)),
      ...(cells.length > 0 ? [table(set, columns, cells)] : []),
    ],
    3,
  );
}

export function notePiece(set: Sized, note: string): Piece {
  if (note === "") return stack([], 0);
  if (set.isClose) return words(set, [strongRun("Note: ", set), plainRun(note, set)], { breaks: true });
  return stack([heading(set, "Note"), words(set, [plainRun(note, set)], { breaks: true })], 3);
}

/** What no sheet may be read without: a line each, the last with room for the code beside it; or one after the other. */
export function cautionsPiece(set: Sized, cautions: readonly string[]): Piece {
  const narrow = { ...set, width: set.width - ONE_PAGE.codeWidth };
  if (set.isClose) {
    const all = [plainRun(cautions.join(" • "), set)];
    const { lines } = layText(set.flow.faces, all, set.width, {});
    const isClear = piecesWidth(set.flow.faces, lines.at(-1) ?? []) <= narrow.width;
    return words(isClear ? set : narrow, all);
  }
  return stack(
    cautions.map((line, i) => paragraph(i < cautions.length - 1 ? set : narrow, line)),
    1,
  );
}
