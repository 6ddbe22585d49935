import type { Assessed } from "@/lib/assess";
import { beadQuantities, beadQuantityRows } from "@/lib/measure";
import {
  acceptedProfile,
  profileFigures,
  type ProfileFigures,
  changeText,
  seamWords,
  verdictSays,
} from "@/lib/report";
import {
  fieldRow,
  setupFieldNames,
  travelSpeed,
  valueInText,
  type RunSetup,
  type SetupField,
} from "@/lib/setup";
import { imperfections } from "@/lib/trade";
import { metric } from "@/lib/units";
import type { ExchangeBead } from "./bead-file";
import type { Cell, Table } from "./table";

/** What a bead's assessment gives the table: kept with the bead's facts, so that a table assesses nothing. */
export interface JudgedCells {
  readonly criteria: string | null;
  readonly edition: string | null;
  readonly verdict: string | null;
  readonly cause: string | null;
  readonly change: string | null;
  /** What was read along toes that somebody accepted, on the first photo that has some. */
  readonly profile: ProfileFigures | null;
}

/** The bead of a row, with what its assessment said. */
export type TableBead = ExchangeBead & {
  readonly judged: JudgedCells;
  /** Number of its job, and its weld as the drawing names it; null: on none. */
  readonly liesOn: { readonly job: number; readonly weld: string | null } | null;
};

/** Column heading (unit in brackets) and how to fill it. Every quantity is metric, whatever the person's units are. */
type Column = readonly [heading: string, cell: (bead: TableBead) => Cell];

const beadColumns: readonly Column[] = [
  ["Bead", ({ number }) => number],
  ["Id", ({ id }) => id],
  ["Revision", ({ revision }) => revision],
  ["Recorded (UTC)", ({ createdAt }) => createdAt],
  ["Run after bead", ({ previous }) => previous?.number ?? null],
  ["Title", ({ content }) => content.title],
  ["Welder", ({ content }) => content.welder],
  ["Job", ({ liesOn }) => liesOn?.job ?? null],
  ["Weld", ({ liesOn }) => liesOn?.weld ?? null],
];

const setupColumns: readonly Column[] = setupFieldNames.map((field) => [
  fieldRow(field).csv,
  ({ content: { setup } }) => setupCell(field, setup),
]);

/** A speed that nobody read is the one length and arc time give. */
function setupCell(field: SetupField, setup: RunSetup): Cell {
  if (field === "travelSpeedMmPerMin") return travelSpeed(setup)?.mmPerMin ?? null;
  const value = setup[field];
  return value !== null && "csvWords" in fieldRow(field) ? valueInText(field, value, metric) : value;
}

/** The last reading of a quantity is the one that counts. */
const readingColumns: readonly Column[] = beadQuantities.map((quantity) => [
  beadQuantityRows[quantity].csv,
  ({ content }) =>
    content.judgement.readings.findLast((reading) => reading.quantity === quantity)?.value ?? null,
]);

/** Headings are for tables that stay: reworded questions must not rename a column. */
const weldColumns: readonly Column[] = [
  ["Closes on itself", ({ content }) => content.judgement.weld.closed],
  ["Welded from one side", ({ content }) => content.judgement.weld.singleSided],
  ["Across the tensile stress", ({ content }) => content.judgement.weld.transverseToTension],
  ["Stiffener to web", ({ content }) => content.judgement.weld.stiffenerToWeb],
  ["Complete penetration asked for", ({ content }) => content.judgement.weld.completePenetration],
  ["Along a lapped edge", ({ content }) => content.judgement.weld.alongLapEdge],
  ["Seam", ({ content: { judgement } }) => judgement.weld.seam && seamWords[judgement.weld.seam]],
  ["Root width on the back (mm)", ({ content }) => content.judgement.weld.rootWidthMm],
];

const judgementColumns: readonly Column[] = [
  ["Photos", ({ photos }) => photos.length],
  ["Marks", ({ content }) => content.photos.reduce((sum, { drawing }) => sum + drawing.marks.length, 0)],
  ["Imperfections", ({ content }) => namesOf(content)],
  ["Criteria", ({ judged }) => judged.criteria],
  ["Edition", ({ judged }) => judged.edition],
  ["Verdict", ({ judged }) => judged.verdict],
  ["Likeliest cause", ({ judged }) => judged.cause],
  ["Change to try", ({ judged }) => judged.change],
  ["Mean width read off the photo (mm)", ({ judged }) => judged.profile?.meanWidthMm ?? null],
  ["Mean width, ± U with k = 2 (mm)", ({ judged }) => judged.profile?.meanWidthUMm ?? null],
  ["Spread of the width, at most (share)", ({ judged }) => judged.profile?.widthSpread ?? null],
  ["Width differs most within 25 mm (mm)", ({ judged }) => judged.profile?.worst25Mm ?? null],
  ["Difference that the reading may make (mm)", ({ judged }) => judged.profile?.worst25DoubtMm ?? null],
  ["Middle off a straight line (mm)", ({ judged }) => judged.profile?.offStraightMm ?? null],
  ["Off a straight line, ± U with k = 2 (mm)", ({ judged }) => judged.profile?.offStraightUMm ?? null],
  ["Both toes sure on (share)", ({ judged }) => judged.profile?.sureShare ?? null],
  ["Note", ({ content }) => content.judgement.note || null],
];

/** Without marks a ranking of causes is a list of priors, which nobody should read as a finding. */
const hasMarks = ({ content }: Pick<ExchangeBead, "content">): boolean =>
  content.photos.some(({ drawing }) => drawing.marks.length > 0);

export function judgedCells({ content, assessment }: Assessed): JudgedCells {
  const { diagnosis, verdict } = assessment;
  const found = hasMarks({ content }) && diagnosis.ok ? diagnosis.value : null;
  const judged = verdict?.ok ? verdict.value : null;
  return {
    criteria: judged && judged.criteriaTitle,
    edition: judged && judged.edition,
    verdict: judged && verdictSays(judged).short,
    cause: found?.causes[0]?.name || null,
    change: found && firstChange(found.firstChange),
    profile: firstProfile(content, assessment.photos),
  };
}

function firstProfile(
  content: ExchangeBead["content"],
  measured: Assessed["assessment"]["photos"],
): ProfileFigures | null {
  for (const { id, drawing } of content.photos) {
    const found = measured.find(({ photoId }) => photoId === id);
    const profile = acceptedProfile(drawing, found?.calibration ?? null);
    if (profile) return profileFigures(profile);
  }
  return null;
}

type Change = Parameters<typeof changeText>[0] & { readonly sentence: string };

function firstChange(change: Change | null): string | null {
  return change && [change.sentence, changeText(change, metric)].filter(Boolean).join(" ");
}

function namesOf(content: ExchangeBead["content"]): string | null {
  const names = content.photos.flatMap(({ drawing }) =>
    drawing.marks.map((mark) => imperfections[mark.imperfection].name),
  );
  return [...new Set(names)].join("; ") || null;
}

/** One row per bead, in the order given. Unknown is an empty cell. */
export function beadTable(beads: readonly TableBead[]): Table {
  const columns = [...beadColumns, ...setupColumns, ...readingColumns, ...weldColumns, ...judgementColumns];
  return {
    columns: columns.map(([heading]) => heading),
    rows: beads.map((bead) => columns.map(([, cell]) => cell(bead))),
  };
}
