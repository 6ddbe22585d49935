import { essentials, hasRows, heatOfCard, notSaid, offCard, otherThanCard, type Card } from "@/lib/cards";
import { procedureNumbers, type ProcedureNumbers } from "@/lib/procedure";
import {
  fieldInText,
  fieldLabel,
  showReading,
  sourceDoubt,
  spanText,
  valueInText,
  type RunSetup,
} from "@/lib/setup";
import { titleOf } from "@/lib/trade";
import { formatQuantity, lengthSystem, type UnitPreferences } from "@/lib/units";
import { cautionLines } from "./caution-lines";
import { setupLine, setupRows, type LabelledRow } from "./setup-rows";

export interface CardSheetRow extends LabelledRow {
  /** What the row rests on, and how far that may be trusted; null: nothing to add. */
  readonly note: string | null;
}

/** A shop's card in words, the same for screen, print and PDF. */
export interface CardSheetDocument {
  readonly title: string;
  readonly line: string;
  /** That it is no qualified procedure; never left out. */
  readonly statement: string;
  readonly fixed: readonly LabelledRow[];
  readonly dials: readonly { readonly label: string; readonly value: string; readonly range: string }[];
  readonly dialsNote: string;
  readonly heat: readonly CardSheetRow[];
  readonly steel: readonly CardSheetRow[];
  readonly steelNote: string;
  readonly essentialsTitle: string;
  readonly essentials: readonly CardSheetRow[];
  readonly note: string;
  readonly cautions: readonly string[];
}

const STATEMENT =
  "A shop's card, not a qualified procedure. It says how this shop ran a weld that it found good. Work to a code wants a procedure that was qualified, or is prequalified, under that code, and people who are.";
const once: readonly string[] = [
  "Process",
  "Wire or rod",
  "Polarity",
  "Shielding gas",
  "Joint",
  "Position",
  "Plate",
  "Mains input",
  "Metal transfer",
  "Travel angle",
  "Leg asked for",
];

export function cardSheet(card: Card, number: number, units: UnitPreferences): CardSheetDocument {
  const show = showReading(units);
  const { setup } = card;
  const numbers = numbersOf(card);
  return {
    title: `Card ${number}: ${card.title}`,
    line: setupLine(setup, units),
    statement: STATEMENT,
    fixed: setupRows({ ...setup, gasFlowLPerMin: null, travelAngleDeg: null }, units).filter(({ label }) =>
      once.includes(label),
    ),
    dials: card.ranges.map(({ field, low, high }) => ({
      label: fieldLabel(field),
      value: setup[field] === null ? "" : show(field, setup[field]),
      range: spanText(show(field, low), show(field, high)),
    })),
    dialsNote: hasRows(setup)
      ? "Each dial may be turned to either end by itself and stays inside the wire's published rows. Two at their ends together may not."
      : "No published row vouches for these ranges: they are what was run, and a little to either side.",
    heat: heatRows(card, units),
    steel: numbers === null ? [] : steelRows(numbers, units),
    steelNote: steelNote(card, numbers),
    essentialsTitle: `Essential variables of ${titleOf(card.code)}`,
    essentials: essentials[card.code].map(({ name, fields, source }) => ({
      label: name,
      value:
        fields
          .filter((field) => setup[field] !== null)
          .map((field) => valueInText(field, setup[field]!, units))
          .join(", ") || "not on this card",
      note: `${source.clause}; how far it may change: check your code`,
    })),
    note: card.note,
    cautions: cautionLines(null),
  };
}

/** Of the steel for this run, with heat and plate as far as the card says them. */
function numbersOf(card: Card): ProcedureNumbers | null {
  const { steel, setup } = card;
  const heat = heatOfCard(card);
  const { thicknessMm, joint } = setup;
  if (
    steel === null ||
    heat === null ||
    thicknessMm === null ||
    joint === null ||
    setup.baseMetal === "stainless"
  )
    return null;
  return procedureNumbers(steel, { heatKJPerMm: heat.value, thicknessMm, joint });
}

function heatRows(card: Card, units: UnitPreferences): readonly CardSheetRow[] {
  const heat = heatOfCard(card);
  if (heat === null) return [];
  const show = (kJPerMm: number): string => formatQuantity("heatInput", kJPerMm, lengthSystem(units.length));
  const by = heat.amps === "read" ? "by the amperes read" : "by the current that feed and tip to work make";
  return [
    {
      label: "Heat input",
      value: `${show(heat.value)} (${spanText(show(heat.low), show(heat.high))} over these ranges)`,
      note: by,
    },
  ];
}

const seconds = (value: number): string => formatQuantity("seconds", value, "metric");

function steelRows(
  { carbonEquivalents, preheat, cooling }: ProcedureNumbers,
  units: UnitPreferences,
): readonly CardSheetRow[] {
  const temperature = (celsius: number): string =>
    formatQuantity("temperature", celsius, lengthSystem(units.length));
  return [
    ...carbonEquivalents.map(({ name, percent, source }) => ({
      label: `Carbon equivalent, ${name}`,
      value: formatQuantity("carbonEquivalent", percent, "metric"),
      note: sourceDoubt(source),
    })),
    {
      label: "Preheat, EN 1011-2 method B",
      value:
        preheat.celsius > 20
          ? `from ${temperature(preheat.celsius)}`
          : "none called for above room temperature",
      note:
        preheat.outside.length > 0
          ? `Outside what the method was made for (${preheat.outside.map((name) => outsideWords[name]).join(", ")}): do not go by it.`
          : sourceDoubt(preheat.source),
    },
    ...cooling.map(({ startC, time, source }) => ({
      label: `Cooling time t8/5 from ${temperature(startC)}`,
      value: `${seconds(time.value)} (${spanText(seconds(time.low), seconds(time.high))}), ${time.flow} plate`,
      note: sourceDoubt(source),
    })),
  ];
}

const outsideWords = {
  cetPercent: "CET",
  thicknessMm: "thickness",
  hydrogenMlPer100G: "hydrogen",
  heatKJPerMm: "heat input",
} as const;

const NO_ANNEX =
  "The hardness and hydrogen methods of D1.1's preheat annex are not on this card: no sound source of their tables was at hand. Look them up.";

function steelNote({ steel, setup }: Card, numbers: ProcedureNumbers | null): string {
  if (setup.baseMetal === "stainless")
    return "Carbon equivalent and preheat are for carbon steel; this card's plate is stainless.";
  if (steel === null)
    return `Without the steel's certificate there is no carbon equivalent and no preheat. ${NO_ANNEX}`;
  return numbers === null
    ? `Heat input, thickness or joint are not on this card, so preheat and cooling time are not worked out. ${NO_ANNEX}`
    : NO_ANNEX;
}

/** What a bead that was run by a card did otherwise: "Voltage 27.5 V, card 23 V to 26 V". */
export function cardWatchLines(card: Card, setup: RunSetup, units: UnitPreferences): readonly string[] {
  const show = showReading(units);
  const open = notSaid(card, setup);
  return [
    ...offCard(card, setup).map(
      ({ field, value, low, high }) =>
        `${fieldLabel(field)} ${show(field, value)}, card ${spanText(show(field, low), show(field, high))}.`,
    ),
    ...otherThanCard(card, setup).map(
      (field) =>
        `${fieldLabel(field)}: ${valueInText(field, setup[field]!, units)}, card ${valueInText(field, card.setup[field]!, units)}.`,
    ),
    ...(open.length > 0
      ? [`Not said, so not watched: ${open.map((field) => fieldInText(field)).join(", ")}.`]
      : []),
  ];
}
