import { z } from "zod";
import { QuantitySchema } from "@/lib/measure";
import { imperfectionIds, places } from "@/lib/trade";
import { ShopCriteriaSchema } from "./shop-criteria";

export const weldKinds = ["fillet", "butt", "surfacing"] as const;
export type WeldKind = (typeof weldKinds)[number];

const mm = z.number().positive().max(20_000).nullable().default(null);
const yes = z.boolean().nullable().default(null);
const quantity = QuantitySchema.nullable().default(null);

/** What is known of the weld as designed. Null is "not known": a rule that needs it stays open. */
export const WeldFactsSchema = z.object({
  kind: z.enum(weldKinds),
  /** t: plate or wall, the thinner part. */
  thicknessMm: mm,
  /** a: nominal throat of a fillet. Derived from the leg (equal legs, 90 degrees) when only that is given. */
  throatMm: mm,
  /** z: specified leg. */
  legMm: mm,
  /** s: nominal thickness of a butt weld; taken as t for full penetration when not given. */
  buttThicknessMm: mm,
  /** L: length of this weld. */
  lengthMm: mm,
  /** b: width of face or reinforcement; a width among the bead readings outranks it. */
  faceWidthMm: mm,
  /** Width of the root reinforcement, as seen from the back. */
  rootWidthMm: mm,
  /** Goes round and closes on itself: windows may lie across the closing point. */
  closed: z.boolean().default(false),
  /** A fillet along the edge of a lapped plate. */
  alongLapEdge: z.boolean().default(false),
  /** Welded from one side only. */
  singleSided: yes,
  /** Transverse to tensile stress (in a primary member, for cyclic loading). */
  transverseToTension: yes,
  /** Fillet joining a stiffener to a web. */
  stiffenerToWeb: yes,
  /** Complete joint penetration groove weld. */
  completePenetration: yes,
  seam: z.enum(["plate", "longitudinal", "girth", "branch"]).nullable().default(null),
});
export type WeldFacts = z.infer<typeof WeldFactsSchema>;

/** One imperfection with its sizes; `MeasuredMark` of `lib/measure` fits it. */
export const ObservationSchema = z.object({
  id: z.string().min(1).max(60),
  imperfection: z.enum(imperfectionIds),
  place: z.enum(places).nullable().default(null),
  alongMm: z.tuple([z.number(), z.number()]).readonly().nullable().default(null),
  lengthMm: quantity,
  depthMm: quantity,
  heightMm: quantity,
  diameterMm: quantity,
  areaMm2: quantity,
});
export type Observation = z.infer<typeof ObservationSchema>;

export const BeadReadingsSchema = z.object({
  leg1: quantity,
  leg2: quantity,
  throat: quantity,
  convexity: quantity,
  reinforcement: quantity,
  width: quantity,
  toeAngle: quantity,
  misalignment: quantity,
  rootGap: quantity,
});
export type BeadReadings = z.infer<typeof BeadReadingsSchema>;

export const JudgeInputSchema = z.object({
  criteriaId: z.string().min(1).max(80),
  settings: z.record(z.string(), z.union([z.string(), z.boolean(), z.number()])).default({}),
  weld: WeldFactsSchema,
  observations: z.array(ObservationSchema).max(2000).default([]),
  beadReadings: BeadReadingsSchema.default(() => BeadReadingsSchema.parse({})),
  /** Looked for and absent. What is neither here nor observed was not looked for, and stays open. */
  lookedFor: z.array(z.enum(imperfectionIds)).default([]),
  /** The shop's own set, when `criteriaId` names it: the case stays readable on its own. */
  shop: ShopCriteriaSchema.nullable().default(null),
});
/** Parsed. Build one with `JudgeInputSchema.parse`, which fills what is left out with null. */
export type JudgeInput = z.infer<typeof JudgeInputSchema>;
