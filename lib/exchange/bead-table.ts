import {
  assess,
  beadQuantities,
  defaultAssessContext,
  type AssessContext,
  type Assessment,
  type BeadQuantity,
} from "@/lib/assess";
import {
  changeText,
  jointWords,
  positionWords,
  progressionWords,
  seamWords,
  verdictSays,
} from "@/lib/report";
import { travelSpeed } from "@/lib/setup";
import { imperfections } from "@/lib/trade";
import { metric } from "@/lib/units";
import type { ExchangeBead } from "./bead-file";
import type { Cell, Table } from "./table";

/** Column heading (unit in brackets) and how to fill it. Every quantity is metric, whatever the person's units are. */
type Column = readonly [heading: string, cell: (bead: ExchangeBead, assessment: Assessment) => Cell];

const readingHeadings: Readonly<Record<BeadQuantity, string>> = {
  "leg-1": "First leg (mm)",
  "leg-2": "Second leg (mm)",
  throat: "Throat (mm)",
  convexity: "Convexity (mm)",
  reinforcement: "Reinforcement (mm)",
  width: "Width (mm)",
  "toe-angle": "Toe angle (deg)",
  misalignment: "Misalignment (mm)",
  "root-gap": "Root gap (mm)",
  "weld-length": "Weld length by rule (mm)",
};

const beadColumns: readonly Column[] = [
  ["Bead", ({ number }) => number],
  ["Id", ({ id }) => id],
  ["Revision", ({ revision }) => revision],
  ["Recorded (UTC)", ({ createdAt }) => createdAt],
  ["Run after bead", ({ previous }) => previous?.number ?? null],
  ["Title", ({ content }) => content.title],
  ["Welder", ({ content }) => content.welder],
];

const setupColumns: readonly Column[] = [
  ["Process", ({ content: { setup } }) => setup.process],
  ["Transfer", ({ content: { setup } }) => setup.transfer],
  ["Electrode class", ({ content: { setup } }) => setup.electrodeClass],
  ["Electrode diameter (mm)", ({ content: { setup } }) => setup.electrodeDiameterMm],
  ["Polarity", ({ content: { setup } }) => setup.polarity],
  ["Gas", ({ content: { setup } }) => setup.gas],
  ["Gas flow (L/min)", ({ content: { setup } }) => setup.gasFlowLPerMin],
  ["Wire feed (m/min)", ({ content: { setup } }) => setup.wireFeedMPerMin],
  ["Volts (V)", ({ content: { setup } }) => setup.volts],
  ["Amps (A)", ({ content: { setup } }) => setup.amps],
  ["Tip to work (mm)", ({ content: { setup } }) => setup.ctwdMm],
  ["Travel direction", ({ content: { setup } }) => setup.travelDirection],
  ["Travel angle (deg)", ({ content: { setup } }) => setup.travelAngleDeg],
  ["Work angle (deg)", ({ content: { setup } }) => setup.workAngleDeg],
  ["Travel speed (mm/min)", ({ content: { setup } }) => travelSpeed(setup)?.mmPerMin ?? null],
  ["Length as recorded (mm)", ({ content: { setup } }) => setup.weldLengthMm],
  ["Arc time (s)", ({ content: { setup } }) => setup.arcTimeS],
  ["Joint", ({ content: { setup } }) => setup.joint && jointWords[setup.joint]],
  ["Position", ({ content: { setup } }) => setup.position && positionWords[setup.position]],
  ["Progression", ({ content: { setup } }) => setup.progression && progressionWords[setup.progression]],
  ["Base metal", ({ content: { setup } }) => setup.baseMetal],
  ["Thickness (mm)", ({ content: { setup } }) => setup.thicknessMm],
  ["Fit-up gap (mm)", ({ content: { setup } }) => setup.fitUpGapMm],
  ["Surface", ({ content: { setup } }) => setup.surface],
  ["Input power", ({ content: { setup } }) => setup.inputPower],
  ["Outdoors", ({ content: { setup } }) => setup.outdoors],
  ["Layer", ({ content: { setup } }) => setup.passCount],
  ["Leg asked for (mm)", ({ content: { setup } }) => setup.targetLegMm],
];

/** The last reading of a quantity is the one that counts. */
const readingColumns: readonly Column[] = beadQuantities.map((quantity) => [
  readingHeadings[quantity],
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
  ["Criteria", (_, { verdict }) => (verdict?.ok ? verdict.value.criteriaTitle : null)],
  ["Edition", (_, { verdict }) => (verdict?.ok ? verdict.value.edition : null)],
  ["Verdict", (_, { verdict }) => (verdict?.ok ? verdictSays(verdict.value).short : null)],
  [
    "Likeliest cause",
    (bead, { diagnosis }) => (hasMarks(bead) && diagnosis.ok && diagnosis.value.causes[0]?.name) || null,
  ],
  [
    "Change to try",
    (bead, { diagnosis }) =>
      hasMarks(bead) && diagnosis.ok ? firstChange(diagnosis.value.firstChange) : null,
  ],
  ["Note", ({ content }) => content.judgement.note || null],
];

/** Without marks a ranking of causes is a list of priors, which nobody should read as a finding. */
const hasMarks = ({ content }: ExchangeBead): boolean =>
  content.photos.some(({ drawing }) => drawing.marks.length > 0);

type Change = Parameters<typeof changeText>[0];

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
export function beadTable(
  beads: readonly ExchangeBead[],
  context: AssessContext = defaultAssessContext,
): Table {
  const columns = [...beadColumns, ...setupColumns, ...readingColumns, ...weldColumns, ...judgementColumns];
  return {
    columns: columns.map(([heading]) => heading),
    rows: beads.map((bead) => {
      const assessment = assess(bead.content, bead.photos, context);
      return columns.map(([, cell]) => cell(bead, assessment));
    }),
  };
}
