/** What can be read off a whole bead, once for every place that asks for it, names it or keeps it. */
export interface BeadQuantityRow {
  /** What the judge calls it; null: the judge is given it as a fact of the weld. */
  readonly name: string | null;
  /** On the form, and inside a sentence with a small letter. */
  readonly label: string;
  /** Of the value and of the gauge's smallest step. */
  readonly unit: "mm" | "deg";
  /** The sort of gauge that gives it. */
  readonly gauge: string;
  /** Column of the bead table. Tables stay: a reworded label renames no column. */
  readonly csv: string;
  /** For a machine that writes a case: what it is, with its unit. */
  readonly says: string;
}

/** One row for each; the order is that of the form, of tables and of the judge's input. */
export const beadQuantityRows = {
  "leg-1": {
    name: "leg1",
    label: "Leg on the first plate",
    unit: "mm",
    gauge: "fillet-gauge",
    csv: "First leg (mm)",
    says: "one leg of a fillet as laid, mm",
  },
  "leg-2": {
    name: "leg2",
    label: "Leg on the second plate",
    unit: "mm",
    gauge: "fillet-gauge",
    csv: "Second leg (mm)",
    says: "the other leg, mm",
  },
  throat: {
    name: "throat",
    label: "Throat",
    unit: "mm",
    gauge: "throat-gauge",
    csv: "Throat (mm)",
    says: "throat of a fillet as laid, mm",
  },
  convexity: {
    name: "convexity",
    label: "Convexity",
    unit: "mm",
    gauge: "throat-gauge",
    csv: "Convexity (mm)",
    says: "how far a fillet's face stands above the line from toe to toe, mm; below nought: hollow",
  },
  reinforcement: {
    name: "reinforcement",
    label: "Reinforcement height",
    unit: "mm",
    gauge: "cap-gauge",
    csv: "Reinforcement (mm)",
    says: "height of a butt weld above the plate, mm",
  },
  width: {
    name: "width",
    label: "Width of the face",
    unit: "mm",
    gauge: "calliper",
    csv: "Width (mm)",
    says: "b: width of the face, toe to toe, mm",
  },
  "toe-angle": {
    name: "toeAngle",
    label: "Toe angle",
    unit: "deg",
    gauge: "protractor",
    csv: "Toe angle (deg)",
    says: "between plate and weld face, through the weld's outside (180 is flat), degrees",
  },
  misalignment: {
    name: "misalignment",
    label: "Misalignment",
    unit: "mm",
    gauge: "misalignment-gauge",
    csv: "Misalignment (mm)",
    says: "offset of the plates, mm",
  },
  "root-gap": {
    name: "rootGap",
    label: "Root gap",
    unit: "mm",
    gauge: "feeler-gauge",
    csv: "Root gap (mm)",
    says: "gap under a fillet, mm",
  },
  "weld-length": {
    name: null,
    label: "Length of the weld",
    unit: "mm",
    gauge: "rule",
    csv: "Weld length by rule (mm)",
    says: "length of the weld, mm",
  },
} as const satisfies Readonly<Record<string, BeadQuantityRow>>;

type Rows = typeof beadQuantityRows;
export type BeadQuantity = keyof Rows;
/** Those the judge is given as readings, and what it calls them. */
export type JudgedQuantity = { [Q in BeadQuantity]: Rows[Q]["name"] extends null ? never : Q }[BeadQuantity];
export type JudgedName<Q extends JudgedQuantity = JudgedQuantity> = Rows[Q]["name"];

export const beadQuantities = Object.keys(beadQuantityRows) as readonly BeadQuantity[];
export const judgedQuantities = beadQuantities.filter(
  (quantity): quantity is JudgedQuantity => beadQuantityRows[quantity].name !== null,
);

const byName = new Map(
  judgedQuantities.map((quantity) => [beadQuantityRows[quantity].name, quantity] as const),
);

/** The quantity a name of the judge's stands for. */
export const quantityNamed = (name: JudgedName): JudgedQuantity => byName.get(name)!;
export const isJudgedName = (name: string): name is JudgedName => byName.has(name as JudgedName);

/** What a reading is called inside a sentence. */
export function quantityInText(quantity: BeadQuantity): string {
  const { label } = beadQuantityRows[quantity];
  return label.charAt(0).toLowerCase() + label.slice(1);
}

/** One value for each quantity, in the order of the table. */
export function forEachQuantity<T>(of: (quantity: BeadQuantity) => T): Readonly<Record<BeadQuantity, T>> {
  return Object.fromEntries(beadQuantities.map((quantity) => [quantity, of(quantity)])) as Record<
    BeadQuantity,
    T
  >;
}
