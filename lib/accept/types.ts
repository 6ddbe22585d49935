import { z } from "zod";
import {
  beadQuantityRows,
  judgedQuantities,
  QuantitySchema,
  type JudgedName,
  type JudgedQuantity,
  type Quantity,
} from "@/lib/measure";
import { imperfectionIds, patterns, places } from "@/lib/trade";
import { ShopCriteriaSchema } from "./shop-criteria";

export const weldKinds = ["fillet", "butt", "surfacing"] as const;
export type WeldKind = (typeof weldKinds)[number];

/** What stands in the JSON Schema; null is "not known". */
const mm = (says: string) => z.number().positive().max(20_000).nullable().default(null).describe(says);
const yes = (says: string) => z.boolean().nullable().default(null).describe(`${says}; null: not known`);
/** A bare number is a size taken as it stands. */
const size = (says: string, unit: Quantity["unit"] = "mm") =>
  z
    .union([
      z
        .number()
        .min(-20_000)
        .max(20_000)
        .transform((value) => statedSize(value, unit)),
      QuantitySchema.refine((quantity) => quantity.unit === unit, {
        error: `unit-${unit}`,
      }),
    ])
    .nullable()
    .default(null)
    .describe(`${says}. A number is taken as it stands; null: not read`);

function statedSize(value: number, unit: Quantity["unit"]): Quantity {
  return { unit, value, expandedUncertainty: 0, source: "stated", budget: [] };
}

/** What is known of the weld as designed. Null is "not known": a rule that needs it stays open. */
export const WeldFactsSchema = z.object({
  kind: z
    .enum(weldKinds)
    .describe("surfacing: beads laid on a plate, judged by the butt weld's figures by analogy"),
  thicknessMm: mm("t: plate or wall, the thinner part"),
  throatMm: mm(
    "a: nominal throat of a fillet; taken from the leg (equal legs, 90 degrees) when only that is given",
  ),
  legMm: mm("z: specified leg of a fillet; taken from the throat likewise"),
  buttThicknessMm: mm("s: nominal thickness of a butt weld; t when not given (full penetration)"),
  lengthMm: mm("L: length of this weld; needed by limits per length and by the short-imperfection rule"),
  faceWidthMm: mm("b: width of face or reinforcement; a width among the bead readings outranks it"),
  rootWidthMm: mm("r: width of the root reinforcement, as seen from the back"),
  closed: z
    .boolean()
    .default(false)
    .describe("goes round and closes on itself: windows may lie across the closing point"),
  alongLapEdge: z
    .boolean()
    .nullable()
    .default(false)
    .describe("a fillet along the edge of a lapped plate of thickness t; null: not known"),
  singleSided: yes("welded from one side only"),
  transverseToTension: yes("transverse to tensile stress (in a primary member, for cyclic loading)"),
  stiffenerToWeb: yes("fillet joining a stiffener to a web"),
  completePenetration: yes("complete joint penetration groove weld"),
  plateAngleDeg: z
    .number()
    .min(30)
    .max(150)
    .default(90)
    .describe("between the plates of a fillet, degrees; 90 unless said"),
  seam: z
    .enum(["plate", "longitudinal", "girth", "branch"])
    .nullable()
    .default(null)
    .describe("girth: circumferential, pipe; branch: pipe branch; null: not known"),
});
export type WeldFacts = z.infer<typeof WeldFactsSchema>;

/** One imperfection with its sizes; `MeasuredMark` of `lib/measure` fits it. */
export const ObservationSchema = z.object({
  id: z.string().min(1).max(60),
  imperfection: z.enum(imperfectionIds),
  place: z
    .enum(places)
    .nullable()
    .default(null)
    .describe("root: seen from the root side (ISO 5817 items 1.8 and 1.18); null is judged as on the face"),
  patterns: z
    .array(z.enum(patterns))
    .max(patterns.length)
    .default([])
    .describe(
      "clustered, scattered, in-line or herringbone pores are a patch: diameterMm is then that of its largest pore, and one off the photo (of the patch's outline) is not used",
    ),
  poreCount: z
    .number()
    .int()
    .min(1)
    .max(10_000)
    .nullable()
    .default(null)
    .describe("of a patch: how many pores it holds; null: not counted"),
  aboutCount: z
    .number()
    .int()
    .min(2)
    .max(10_000)
    .nullable()
    .default(null)
    .describe(
      "about how many one mark holds, estimated by eye: half of it may fail a limit on how many; it meets none, and no size or sum is made of it. null: nobody said",
    ),
  alongMm: z
    .tuple([z.number(), z.number()])
    .readonly()
    .nullable()
    .default(null)
    .describe("where along the weld it begins and ends, mm from the start; twice the same for a pore"),
  lengthMm: size("along the weld, mm"),
  depthMm: size(
    "below the surface: undercut, crater pipe, underfill, root concavity, missing penetration; mm",
  ),
  heightMm: size("above the surface: excess penetration; how far an overlap reaches over the plate; mm"),
  diameterMm: size("of a pore, of a patch its largest pore, mm"),
  areaMm2: size("mm2", "mm2"),
});
export type Observation = z.infer<typeof ObservationSchema>;

type ReadingShape = { readonly [Q in JudgedQuantity as JudgedName<Q>]: ReturnType<typeof size> };
const readingShape = Object.fromEntries(
  judgedQuantities.map((quantity) => {
    const { name, says, unit } = beadQuantityRows[quantity];
    return [name, size(says, unit)];
  }),
) as unknown as ReadingShape;

/** Readings of the whole bead: they hold along it. A stretch that differs is an observation with its own length. */
export const BeadReadingsSchema = z.object(readingShape);
export type BeadReadings = z.infer<typeof BeadReadingsSchema>;

const looked = z.array(z.enum(imperfectionIds));

export const JudgeInputSchema = z.object({
  criteriaId: z.string().min(1).max(80).describe("one of the ids of --list"),
  settings: z
    .record(z.string(), z.union([z.string(), z.boolean(), z.number()]))
    .default({})
    .describe("setting id to choice, both from --list; what is left out takes its default"),
  weld: WeldFactsSchema,
  observations: z.array(ObservationSchema).max(2000).default([]),
  beadReadings: BeadReadingsSchema.default(() => BeadReadingsSchema.parse({})),
  lookedFor: z
    .union([looked, z.literal("all").transform(() => [...imperfectionIds])])
    .default([])
    .describe('looked for and absent where not observed, or "all"; what is neither stays open'),
  only: looked
    .nullable()
    .default(null)
    .describe("judge only the clauses on these imperfections; the verdict then speaks of them alone"),
  /** The shop's own set, when `criteriaId` names it: the case stays readable on its own. */
  shop: ShopCriteriaSchema.nullable().default(null),
});
/** Parsed. Build one with `JudgeInputSchema.parse`, which fills what is left out with null. */
export type JudgeInput = z.infer<typeof JudgeInputSchema>;
