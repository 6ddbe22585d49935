import { z } from "zod";
import { BeadContentSchema, photoRoles } from "@/lib/assess";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { JudgeInputSchema, ShopCriteriaSchema, ShopKeySchema, weldKinds } from "@/lib/accept";
import { BeadsFileSchema, ExchangePhotoSchema } from "@/lib/exchange";
import { JobFieldsSchema } from "@/lib/inspect";
import { MeasureCaseSchema } from "@/lib/measure";
import type { ProfileFigures } from "@/lib/report";
import { BeadFilterSchema } from "@/lib/find";
import { groupings } from "@/app/trends/grouping";
import { CardSchema } from "@/lib/cards";
import { PlanAskSchema } from "@/lib/plan";
import { componentIds, GaugeStudySchema } from "@/lib/gauge";
import { TrialSchema } from "@/lib/trials";
import { periods } from "@/lib/trends";
import { ListPageSchema } from "@/app/_door/list-page";
import { ExerciseContentSchema } from "@/lib/course";
import { NewBeadSchema, OwnIdSchema, PageSchema } from "../beads/shapes";
import { LogPageSchema } from "../log/shapes";
import { roles, scopes } from "@/lib/people";
import { NewsAskedSchema } from "../news/shapes";

const text = z.string();
const previous = z.object({ id: text, number: z.int(), title: text }).nullable();

const BeadSchema = z.object({
  id: text,
  number: z.int(),
  revision: z.int(),
  createdAt: z.iso.datetime(),
  updatedAt: z.iso.datetime(),
  previous,
  welderId: text.nullable(),
  jobId: text.nullable(),
  weldId: text.nullable(),
  handInId: text.nullable(),
  content: BeadContentSchema,
  photos: z.array(ExchangePhotoSchema),
});

const mm = z.number();
/** Figures read along the toes that somebody accepted: mm and shares, U with k = 2; null: not read. No verdict reads them. */
const ProfileSchema: z.ZodType<ProfileFigures> = z.object({
  meanWidthMm: mm,
  meanWidthUMm: mm,
  widthSpread: z.number(),
  worst25Mm: mm.nullable(),
  worst25DoubtMm: mm.nullable(),
  offStraightMm: mm,
  offStraightUMm: mm,
  sureShare: z.number(),
});

/** What `after` is to be for the page after; null: this was the last. */
const next = text.nullable();

const TrialRecordSchema = z.object({
  id: text,
  number: z.int(),
  revision: z.int(),
  createdAt: z.iso.datetime(),
  personId: text.nullable(),
  content: TrialSchema,
  runs: z.array(z.object({ place: z.int(), beadId: text })),
});

const GaugeStudyRecordSchema = z.object({
  id: text,
  instrumentId: text,
  createdAt: z.iso.datetime(),
  withdrawnAt: z.iso.datetime().nullable(),
  study: GaugeStudySchema,
  figures: z.object({
    lines: z.array(
      z.object({
        id: z.enum(componentIds),
        variance: z.number(),
        sigma: z.number(),
        bounds: z.object({ low: z.number(), high: z.number() }).nullable(),
        ofStudy: z.number().nullable(),
        ofTolerance: z.number().nullable(),
      }),
    ),
    pooled: z.boolean(),
    gaugeDegrees: z.number().nullable(),
    categories: z.int().nullable(),
    reading: z
      .object({ on: z.iso.date(), u: z.number(), k: z.number(), unit: z.enum(["mm", "deg"]) })
      .nullable(),
  }),
});

const CardRecordSchema = z.object({
  id: text,
  number: z.int(),
  createdAt: z.iso.datetime(),
  retiredAt: z.iso.datetime().nullable(),
  personId: text.nullable(),
  content: CardSchema,
  beadIds: z.array(text),
});

const IssuesSchema = z.object({
  issues: z.array(z.object({ code: text, message: text.optional(), path: z.array(z.unknown()).optional() })),
});

const ImportPlanSchema = z.object({
  done: z.boolean(),
  beads: z.array(
    z.object({
      id: text,
      title: text,
      fate: z.enum(["new", "same", "differs", "photo-taken"]),
      ownNumber: z.int(),
      number: z.int(),
      photos: z.int(),
      revision: z.int(),
      revisionHere: z.int().nullable(),
    }),
  ),
  criteria: z.array(z.object({ id: text, title: text, fate: z.enum(["new", "same", "differs"]) })),
  jobs: z.array(
    z.object({
      id: text,
      title: text,
      fate: z.enum(["new", "same", "differs"]),
      ownNumber: z.int(),
      number: z.int(),
      inspections: z.int(),
    }),
  ),
  fresh: z.int(),
  same: z.int(),
  conflicts: z.int(),
  renumbered: z.int(),
  otherTables: z.boolean(),
});

const CriteriaListSchema = z.object({
  criteria: z.array(
    z.looseObject({
      id: text,
      title: text,
      document: text,
      edition: text,
      /** Shared by the editions of one book, and by the versions of the shop's own limits. */
      family: text,
      /** Of the same family, oldest first, this one among them. */
      editions: z.array(z.object({ id: text, edition: text })),
      /** The newest of them; null where this one is. */
      newest: text.nullable(),
      weldKinds: z.array(z.enum(weldKinds)),
      imperfections: z.array(text),
      /** null: comes with the program. */
      shop: z
        .object({
          key: ShopKeySchema,
          version: z.int(),
          newest: z.boolean(),
          withdrawnAt: z.iso.datetime().nullable(),
        })
        .nullable(),
    }),
  ),
  next: text.nullable(),
});

const ShopCriteriaVersionsSchema = z.object({
  key: ShopKeySchema,
  next: text.nullable(),
  versions: z.array(
    z.object({
      id: text,
      key: ShopKeySchema,
      version: z.int(),
      content: ShopCriteriaSchema,
      createdAt: z.iso.datetime(),
      withdrawnAt: z.iso.datetime().nullable(),
    }),
  ),
});

const JobSchema = z.object({
  id: text,
  number: z.int(),
  revision: z.int(),
  createdAt: z.iso.datetime(),
  content: JobFieldsSchema,
});

const ShareSchema = z.object({
  count: z.int(),
  of: z.int(),
  value: z.number().nullable(),
  low: z.number(),
  high: z.number(),
  method: text,
});

const share = z.number().min(0).max(1).nullable();

const GroupSchema = z.object({
  id: text,
  name: text,
  closedAt: z.iso.datetime().nullable(),
  students: z.int(),
  exercises: z.int(),
});

const ExerciseSchema = z.object({
  id: text,
  group: z.object({ id: text, name: text, closed: z.boolean() }),
  title: text,
  content: ExerciseContentSchema,
  revision: z.int(),
  code: text,
  codeUntil: z.iso.datetime(),
  open: z.boolean(),
  withoutAccount: z.boolean(),
  dueAt: z.iso.datetime().nullable(),
  handIns: z.int(),
});

/** What a person writes of limits; key, version and author are given here. */
const ShopDraftSchema = z
  .object(ShopCriteriaSchema.shape)
  .pick({ title: true, rows: true, note: true, notCarried: true });

const GradesSchema = z.object({
  group: z.object({ id: text, name: text }),
  exercises: z.array(
    z.object({
      id: text,
      title: text,
      dueAt: z.iso.datetime().nullable(),
      mean: share,
      of: z.int(),
      lines: z.array(
        z.object({ title: text, weight: z.int(), mean: z.number().min(0).max(4).nullable(), of: z.int() }),
      ),
    }),
  ),
  students: z.array(
    z.object({
      personId: text.nullable(),
      name: text.nullable(),
      mark: text.nullable(),
      mean: share,
      exercises: z.array(
        z.object({
          exerciseId: text,
          state: z.enum(["not-handed-in", "waiting", "returned", "seen"]),
          attempts: z.int(),
          handInIds: z.array(text),
          points: z.number().nullable(),
          outOf: z.int().nullable(),
          score: share,
          words: text.nullable(),
        }),
      ),
    }),
  ),
});

const TrendsSchema = z.looseObject({
  beads: z.int(),
  rejects: z.looseObject({ rejected: ShareSchema }),
  by: z.enum(groupings.map(({ id }) => id)),
  period: z.enum(periods),
});

/** What stands behind `#/components/schemas/…`: made from the schemas the routes parse with. */
const inputs = {
  BeadContent: BeadContentSchema,
  NewBead: NewBeadSchema,
  SaveBead: z.object({ basedOn: z.int().min(1), content: BeadContentSchema }),
  DiagnoseCase: DiagnoseInputSchema,
  JudgeCase: JudgeInputSchema,
  MeasureCase: MeasureCaseSchema,
  PlanCase: PlanAskSchema,
  NewJob: JobFieldsSchema,
  SaveJob: z.object({ basedOn: z.int().min(1), content: JobFieldsSchema }),
  NewShopCriteria: ShopDraftSchema,
  SaveShopCriteria: z.object({ basedOn: z.int().min(1), content: ShopDraftSchema }),
  Trial: TrialRecordSchema,
  TrialList: z.object({ trials: z.array(TrialRecordSchema), next }),
  Card: CardRecordSchema,
  CardList: z.object({ cards: z.array(CardRecordSchema), next }),
  GaugeStudy: GaugeStudyRecordSchema,
  GaugeStudyList: z.object({ studies: z.array(GaugeStudyRecordSchema), next }),
} as const;

const outputs = {
  Bead: BeadSchema,
  BeadRead: BeadSchema.extend({ profile: ProfileSchema.nullable() }),
  BeadList: z.object({
    total: z.int(),
    limit: z.int(),
    offset: z.int(),
    /** Numbers of beads that would stand on this page and cannot be read. */
    unreadable: z.array(z.int()),
    next: text.nullable(),
    beads: z.array(
      BeadSchema.extend({
        verdict: z.enum(["accept", "reject", "cannot-say"]).nullable(),
        stale: z.boolean(),
        confirmedCause: text.nullable(),
      }),
    ),
  }),
  BeadsFile: BeadsFileSchema,
  CriteriaList: CriteriaListSchema,
  ShopCriteriaVersions: ShopCriteriaVersionsSchema,
  ShopCriteriaSaved: z.object({ key: ShopKeySchema, version: z.int(), isNew: z.boolean() }),
  ImportPlan: ImportPlanSchema,
  Issues: IssuesSchema,
  Errors: z.object({ errors: z.array(text) }),
  Trends: TrendsSchema,
  Group: GroupSchema.extend({
    members: z.array(z.object({ id: text, name: text, mark: text.nullable(), hasAccount: z.boolean() })),
  }),
  GroupList: z.object({ groups: z.array(GroupSchema), next }),
  Grades: GradesSchema,
  PhotoTaken: z.object({
    photo: ExchangePhotoSchema,
    alsoOn: z.array(z.int()),
    notices: z.array(z.unknown()),
  }),
  Revision: z.object({ revision: z.int() }),
  Job: JobSchema,
  JobList: z.object({ jobs: z.array(JobSchema), next }),
  JobWithInspections: JobSchema.extend({
    inspections: z.array(
      z.looseObject({ id: text, number: z.int(), revision: z.int(), signed: z.int(), imported: z.boolean() }),
    ),
    next,
  }),
  Exercise: ExerciseSchema,
  ExerciseList: z.object({ exercises: z.array(ExerciseSchema), next }),
  Me: z.object({
    ...{ personId: text.nullable(), mark: text.nullable() },
    /** The leading one; all of them stand in `roles`, this one first. */
    role: z.enum(roles),
    roles: z.array(z.enum(roles)),
    scopes: z.array(z.enum(scopes)).nullable(),
  }),
  News: z.object({
    news: z.array(
      z.object({
        kind: z.enum(["handed-in", "returned"]),
        ...{ handInId: text, exercise: text },
        at: z.iso.datetime(),
      }),
    ),
    /** What `since` is to be the next time. */
    until: z.iso.datetime(),
  }),
  LogEntries: z.object({
    entries: z.array(z.looseObject({ seq: z.int(), at: text, by: text, action: text, subject: text })),
    /** What `before` is to be for the page after; null: this was the last. */
    next: z.int().nullable(),
  }),
} as const;

export type SchemaName = keyof typeof inputs | keyof typeof outputs;

/** JSON Schema without its dialect: a document of OpenAPI 3.1 says that once. */
function plain(schema: z.ZodType, io: "input" | "output"): Record<string, unknown> {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, {
    target: "draft-2020-12",
    io,
    unrepresentable: "any",
  });
  return rest;
}

export function componentSchemas(): Record<SchemaName, unknown> {
  const made = [
    ...Object.entries(inputs).map(([name, schema]) => [name, plain(schema, "input")] as const),
    ...Object.entries(outputs).map(([name, schema]) => [name, plain(schema, "output")] as const),
  ];
  return Object.fromEntries(made) as Record<SchemaName, unknown>;
}

export interface Parameter {
  readonly name: string;
  readonly in: "query" | "path";
  readonly required: boolean;
  readonly schema: unknown;
}

function queryOf(schema: z.ZodObject): readonly Parameter[] {
  const { properties = {} } = z.toJSONSchema(schema, { target: "draft-2020-12", io: "input" });
  return Object.entries(properties).map(([name, property]) => ({
    name,
    in: "query",
    required: false,
    schema: property,
  }));
}

export const filterParameters = queryOf(BeadFilterSchema);
export const recordParameters = queryOf(
  z.object({
    revision: z.int().min(1).optional(),
    draft: z.literal("").optional(),
    units: z.enum(["metric", "inch", "both"]).optional(),
  }),
);
export const newsParameters = queryOf(NewsAskedSchema);
export const logParameters = queryOf(LogPageSchema);
export const pageParameters = queryOf(PageSchema);
export const listPageParameters = queryOf(ListPageSchema);
export const trendParameters = queryOf(
  z.object({ by: z.enum(groupings.map(({ id }) => id)).optional(), period: z.enum(periods).optional() }),
);
export const pickParameter = queryOf(z.object({ pick: z.array(text).optional() }));
export const photoParameters = queryOf(
  z.object({ role: z.enum(photoRoles).optional(), id: OwnIdSchema.optional() }),
);
export const importParameters = queryOf(
  z.object({ check: z.literal("yes").optional(), conflicts: z.literal("leave").optional() }),
);
