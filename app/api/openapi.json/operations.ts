import type { Deed } from "@/lib/people";
import {
  filterParameters,
  importParameters,
  logParameters,
  pageParameters,
  pickParameter,
  recordParameters,
  photoParameters,
  trendParameters,
  type Parameter,
  type SchemaName,
} from "./schemas";

/** Content of a body: one of our schemas as JSON, or a file of this media type. */
export type Body = { readonly json: SchemaName } | { readonly file: string };

export interface Operation {
  readonly path: string;
  readonly method: "get" | "post" | "put" | "delete";
  readonly id: string;
  readonly summary: string;
  /** What somebody must be allowed to do; null: open to whoever reaches the server. */
  readonly deed: Deed | null;
  readonly parameters?: readonly Parameter[];
  readonly body?: Body;
  /** null: an answer without a body. */
  readonly success: { readonly status: 200 | 201 | 204; readonly body: Body | null };
  /** What a refusal looks like. */
  readonly refusals: readonly number[];
  readonly refusalBody?: SchemaName;
}

const json = (name: SchemaName): Body => ({ json: name });
const file = (type: string): Body => ({ file: type });
const plainJson = file("application/json");
const answers = (status: 200 | 201, body: Body): Operation["success"] => ({ status, body });

const beads: readonly Operation[] = [
  {
    path: "/api/beads",
    method: "get",
    id: "listBeads",
    summary: "The beads that fit a filter, a page at a time, with the verdict of each.",
    deed: "bead.read",
    parameters: [...filterParameters, ...pageParameters],
    success: answers(200, json("BeadList")),
    refusals: [400],
  },
  {
    path: "/api/beads",
    method: "post",
    id: "makeBead",
    summary: "Makes a bead; what is left out stays unknown.",
    deed: "bead.create",
    body: json("NewBead"),
    success: answers(201, json("Bead")),
    refusals: [409, 413, 422, 503],
  },
  {
    path: "/api/beads/{beadId}",
    method: "get",
    id: "readBead",
    summary: "One bead with its revision.",
    deed: "bead.read",
    success: answers(200, json("Bead")),
    refusals: [404, 409],
  },
  {
    path: "/api/beads/{beadId}",
    method: "put",
    id: "saveBead",
    summary: "Saves a whole bead if it is still at the revision it was based on; 409 when it is not.",
    deed: "bead.write",
    body: json("SaveBead"),
    success: answers(200, json("Revision")),
    refusals: [400, 404, 409, 413, 422, 503],
  },
  {
    path: "/api/beads/{beadId}/photos",
    method: "post",
    id: "addPhoto",
    summary: "Puts a photo on a bead; the body is the picture's bytes.",
    deed: "bead.write",
    parameters: photoParameters,
    body: file("application/octet-stream"),
    success: answers(201, json("PhotoTaken")),
    refusals: [400, 404, 409, 413, 415, 422, 507],
  },
  {
    path: "/api/beads/{beadId}/annotations.json",
    method: "get",
    id: "exportAnnotations",
    summary: "The marks as a W3C Web Annotation collection with SVG selectors in photo pixels.",
    deed: "data.export",
    success: answers(200, file("application/ld+json")),
    refusals: [404],
  },
  {
    path: "/api/beads/{beadId}/sheet.pdf",
    method: "get",
    id: "sheet",
    summary: "The sheet of a bead as a PDF.",
    deed: "bead.read",
    success: answers(200, file("application/pdf")),
    refusals: [404, 429],
  },
  {
    path: "/api/beads/{beadId}/card.pdf",
    method: "get",
    id: "benchCard",
    summary: "The bench card of a bead as a PDF: the one change and the settings of the next bead.",
    deed: "bead.read",
    success: answers(200, file("application/pdf")),
    refusals: [404, 429],
  },
  {
    path: "/api/photos/{sha256}/{size}",
    method: "get",
    id: "picture",
    summary: "A derived picture (view, small or thumb), upright and without metadata.",
    deed: "bead.read",
    success: answers(200, file("image/*")),
    refusals: [404],
  },
];

const exportOf = (
  name: string,
  id: string,
  summary: string,
  body: Body,
  refusals: readonly number[] = [],
): Operation => ({
  path: `/api/export/${name}`,
  method: "get",
  id,
  summary,
  deed: "data.export",
  parameters: [...filterParameters, ...pickParameter],
  success: answers(200, body),
  refusals: [400, ...refusals],
});

const data: readonly Operation[] = [
  exportOf(
    "beads.csv",
    "exportBeadsCsv",
    "One row per bead with the number of its job and its weld as the drawing names it, metric, guarded against formulas.",
    file("text/csv"),
  ),
  exportOf(
    "marks.csv",
    "exportMarksCsv",
    "One row per mark, metric, guarded against formulas.",
    file("text/csv"),
  ),
  exportOf("beads.json", "exportBeadsJson", "Beads by the published schema.", json("BeadsFile")),
  exportOf(
    "archive.zip",
    "exportArchive",
    "Beads with their original photos and checksums: one (id), a job's (job) or whatever fits.",
    file("application/zip"),
    [404, 409, 413, 429],
  ),
  {
    path: "/api/export/beads.schema.json",
    method: "get",
    id: "beadsSchema",
    summary: "The JSON Schema of beads.json.",
    deed: "data.export",
    success: answers(200, file("application/schema+json")),
    refusals: [],
  },
  {
    path: "/api/import",
    method: "post",
    id: "importArchive",
    summary: "Imports an archive, all or nothing; with check=yes it only says what it would do.",
    deed: "data.import",
    parameters: importParameters,
    body: file("application/zip"),
    success: answers(201, json("ImportPlan")),
    refusals: [409, 413, 422, 429, 503],
  },
  {
    path: "/api/criteria",
    method: "get",
    id: "listCriteria",
    summary:
      "What a bead can be judged by: built-in sets with their rules, and every version of the shop's own.",
    deed: "bead.read",
    success: answers(200, json("CriteriaList")),
    refusals: [],
  },
  {
    path: "/api/criteria/{key}",
    method: "get",
    id: "shopCriteria",
    summary: "Every version of one set of the shop's own limits, whole, newest first.",
    deed: "bead.read",
    success: answers(200, json("ShopCriteriaVersions")),
    refusals: [404],
  },
  {
    path: "/api/trends",
    method: "get",
    id: "trends",
    summary:
      "Paretos, reject rate by period with control limits, and groups, for the beads that fit a filter.",
    deed: "trends.read",
    parameters: [...filterParameters, ...trendParameters],
    success: answers(200, json("Trends")),
    refusals: [400],
  },
];

/** A door that answers GET with its schema and POST with an answer to one case. */
function door(name: string, body: SchemaName, summary: string): readonly Operation[] {
  const path = `/api/${name}`;
  return [
    {
      path,
      method: "get",
      id: `${name}Schema`,
      summary: `The JSON Schema of what ${name} takes.`,
      deed: "bead.read",
      success: answers(200, plainJson),
      refusals: [],
    },
    {
      path,
      method: "post",
      id: name,
      summary: `${summary} A name the schema does not know is refused.`,
      deed: "bead.read",
      body: json(body),
      success: answers(200, plainJson),
      refusals: [400, 413, 422],
      refusalBody: "Errors",
    },
  ];
}

const series: readonly Operation[] = [
  {
    path: "/api/trials",
    method: "get",
    id: "listTrials",
    summary: "Trials: which knobs are varied and how far, their points, and which bead was run at which.",
    deed: "bead.read",
    success: answers(200, json("TrialList")),
    refusals: [],
  },
  {
    path: "/api/cards",
    method: "get",
    id: "listCards",
    summary: "The shop's procedure cards, no qualified procedures, with the beads run by each.",
    deed: "bead.read",
    success: answers(200, json("CardList")),
    refusals: [],
  },
  {
    path: "/api/cards/{cardId}/pdf",
    method: "get",
    id: "cardPdf",
    summary: "A card as a PDF.",
    deed: "bead.read",
    success: answers(200, file("application/pdf")),
    refusals: [404, 429],
  },
];

/** Every operation of the HTTP API. A test compares it with the route files there are. */
export const operations: readonly Operation[] = [
  ...beads,
  ...data,
  ...series,
  ...door("diagnose", "DiagnoseCase", "Likely causes of what was seen, checks, and the one change to try."),
  ...door("judge", "JudgeCase", "A verdict, clause by clause, by one criteria set."),
  ...door(
    "plan",
    "PlanCase",
    "A starting set-up for one run with ranges, what it gives and what limits it, or why there is none.",
  ),
  ...door("measure", "MeasureCase", "Sizes in millimetres with their uncertainty, from marks and a scale."),
  {
    path: "/api/beads/{beadId}/photos/{photoId}",
    method: "delete",
    id: "removePhoto",
    summary: "Takes a photo and its marks off a bead; the original stays in the store.",
    deed: "bead.write",
    success: { status: 204, body: null },
    refusals: [404, 503],
  },
  {
    path: "/api/inspections/{inspectionId}/pdf",
    method: "get",
    id: "inspectionPdf",
    summary: "A signed revision as a PDF (revision=N), or the draft (draft), in units=metric, inch or both.",
    deed: "record.read",
    parameters: recordParameters,
    success: answers(200, file("application/pdf")),
    refusals: [404, 409, 429],
  },
  {
    path: "/api/groups",
    method: "get",
    id: "listGroups",
    summary: "Every group with its id.",
    deed: "course.read",
    success: answers(200, json("GroupList")),
    refusals: [],
  },
  {
    path: "/api/groups/{groupId}/grades",
    method: "get",
    id: "grades",
    summary: "A group's gradebook: students by exercises, with state and score of each.",
    deed: "course.read",
    success: answers(200, json("Grades")),
    refusals: [404],
  },
  {
    path: "/api/groups/{groupId}/grades.csv",
    method: "get",
    id: "gradesCsv",
    summary: "The same as CSV, one row a student and exercise.",
    deed: "course.read",
    success: answers(200, file("text/csv")),
    refusals: [404],
  },
  {
    path: "/api/gauge-studies",
    method: "get",
    id: "listGaugeStudies",
    summary: "Studies of gauges, people by parts by tries, each with its variance components.",
    deed: "job.read",
    success: answers(200, json("GaugeStudyList")),
    refusals: [],
  },
  {
    path: "/api/gauge-studies/{studyId}/csv",
    method: "get",
    id: "gaugeStudyCsv",
    summary: "A study as CSV: every reading, then what came of them.",
    deed: "job.read",
    success: answers(200, file("text/csv")),
    refusals: [404],
  },
  {
    path: "/api/hand-in/{code}",
    method: "post",
    id: "handIn",
    summary:
      "Hands in a bead for an exercise: the photo as the body, the form in a header; open where the exercise is.",
    deed: null,
    body: file("image/*"),
    success: answers(201, plainJson),
    refusals: [403, 404, 409, 413, 415, 422, 429, 503],
  },
  {
    path: "/api/check",
    method: "post",
    id: "checkArchive",
    summary: "Which key signed what in an archive, and when; open to anybody, and nothing of it is kept.",
    deed: null,
    body: file("application/zip"),
    success: answers(200, plainJson),
    refusals: [403, 413, 429, 503],
  },
  {
    path: "/api/jobs",
    method: "get",
    id: "listJobs",
    summary: "Every job, newest first.",
    deed: "job.read",
    success: answers(200, json("JobList")),
    refusals: [],
  },
  {
    path: "/api/jobs",
    method: "post",
    id: "makeJob",
    summary: "Makes a job; what is left out stays empty.",
    deed: "job.write",
    body: json("NewJob"),
    success: answers(201, json("Job")),
    refusals: [413, 422, 503],
  },
  {
    path: "/api/jobs/{jobId}",
    method: "get",
    id: "readJob",
    summary: "One job with the inspections of it.",
    deed: "job.read",
    success: answers(200, json("JobWithInspections")),
    refusals: [404],
  },
  {
    path: "/api/exercises",
    method: "get",
    id: "listExercises",
    summary: "Every exercise with its group and how many beads were handed in.",
    deed: "course.read",
    success: answers(200, json("ExerciseList")),
    refusals: [],
  },
  {
    path: "/api/log",
    method: "get",
    id: "readLog",
    summary: "Entries of the log from newest to oldest, a page at a time.",
    deed: "log.read",
    parameters: logParameters,
    success: answers(200, json("LogEntries")),
    refusals: [400],
  },
  {
    path: "/api/log/head",
    method: "get",
    id: "logHead",
    summary: "The log's newest entry, signed by this installation, to be kept elsewhere.",
    deed: "log.read",
    success: answers(200, plainJson),
    refusals: [404],
  },
  {
    path: "/api/openapi.json",
    method: "get",
    id: "openapi",
    summary: "This document.",
    deed: "bead.read",
    success: answers(200, plainJson),
    refusals: [],
  },
  {
    path: "/api/health",
    method: "get",
    id: "health",
    summary: "Says that the server answers.",
    deed: null,
    success: answers(200, plainJson),
    refusals: [],
  },
];
