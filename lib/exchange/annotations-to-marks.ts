import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import { MOST_MARKS, type MarkShapeData } from "@/lib/marks";
import { readTags, type TaggedMark } from "./annotation-tags";
import type { ExchangeIssue } from "./issue";
import type { Frame } from "./shape-to-svg";
import { svgToShape } from "./svg-to-shape";

/** A mark as an annotation tells it. Ids come with the action that adds it. */
export interface ImportedMark extends TaggedMark {
  readonly shape: MarkShapeData;
  readonly note: string;
}

/** The model lets most properties hold one value or a list of them. */
const many = <S extends z.ZodType>(schema: S) => z.union([z.array(schema), schema.transform((one) => [one])]);
const typed = (name: string) => many(z.string()).refine((types) => types.includes(name), `type ${name}`);

const BodySchema = z.object({
  type: many(z.string()).optional(),
  purpose: many(z.string()).optional(),
  value: z.string().max(4000).optional(),
});
const SelectorSchema = z.object({ type: many(z.string()), value: z.string().optional() });
const TargetSchema = z.object({
  source: z.union([z.string(), z.object({ id: z.string() }).transform(({ id }) => id)]),
  selector: many(SelectorSchema),
});
const AnnotationSchema = z.object({
  type: typed("Annotation"),
  motivation: many(z.string()).optional(),
  body: many(z.union([BodySchema, z.string().transform(() => ({}) as z.infer<typeof BodySchema>)])).default(
    [],
  ),
  target: many(TargetSchema).refine((targets) => targets.length === 1, "one target"),
});
type ReadAnnotation = z.infer<typeof AnnotationSchema>;

const malformed = (path: readonly (string | number)[], problem: string) =>
  issue("annotation-malformed" as const, path, { problem });

/**
 * Marks from a Web Annotation collection with its first page embedded, from a page, or from one annotation. All or
 * none: the first thing that is not understood is an issue with its place, so that no mark is lost silently.
 * `photo.iri` null takes annotations of whatever picture. Issues: `annotation-malformed`, `annotations-too-many`,
 * `annotation-other-photo`, `annotation-selector` and those of the shapes.
 */
export function annotationsToMarks(
  json: unknown,
  photo: Frame & { readonly iri: string | null },
): Result<readonly ImportedMark[], ExchangeIssue> {
  const items = itemsOf(json);
  if (!items.ok) return items;
  if (items.value.length > MOST_MARKS)
    return fail(issue("annotations-too-many", [], { found: items.value.length, most: MOST_MARKS }));
  const read = items.value.map((item, i) => importOne(item, photo, i));
  const wrong = read.flatMap((one) => (one.ok ? [] : one.issues));
  return wrong.length > 0
    ? fail<ExchangeIssue>(...wrong)
    : ok(read.flatMap((one) => (one.ok ? [one.value] : [])));
}

const PageSchema = z.object({ type: typed("AnnotationPage"), items: z.array(z.unknown()) });
const CollectionSchema = z.object({
  type: typed("AnnotationCollection"),
  total: z.int().nonnegative().optional(),
  first: PageSchema.extend({ next: z.unknown().optional() }).optional(),
});

function itemsOf(json: unknown): Result<readonly unknown[], ExchangeIssue> {
  const collection = CollectionSchema.safeParse(json);
  if (collection.success) {
    const items = collection.data.first?.items ?? [];
    const { total = items.length } = collection.data;
    // Further pages lie elsewhere, and nothing is fetched here.
    const whole = total === items.length && collection.data.first?.next === undefined;
    return whole ? ok(items) : fail(malformed(["first"], "not every page is in the file"));
  }
  const page = PageSchema.safeParse(json);
  if (page.success) return ok(page.data.items);
  return AnnotationSchema.safeParse(json).success
    ? ok([json])
    : fail(malformed([], "neither collection, page nor annotation"));
}

function importOne(
  item: unknown,
  photo: Frame & { readonly iri: string | null },
  i: number,
): Result<ImportedMark, ExchangeIssue> {
  const parsed = AnnotationSchema.safeParse(item);
  if (!parsed.success) return fail(malformed([i], parsed.error.issues[0]?.path.join(".") ?? ""));
  const [target] = parsed.data.target;
  if (!target) return fail(malformed([i, "target"], "no target"));
  if (photo.iri !== null && target.source !== photo.iri)
    return fail(issue("annotation-other-photo", [i], { source: target.source.slice(0, 200) }));
  const svg = target.selector.find(({ type, value }) => type.includes("SvgSelector") && value !== undefined);
  if (svg?.value === undefined) {
    const selector = target.selector.map(({ type }) => type.join(" ")).join(", ");
    return fail(issue("annotation-selector", [i], { selector: selector.slice(0, 200) }));
  }
  const shape = svgToShape(svg.value, photo);
  if (!shape.ok)
    return fail<ExchangeIssue>(...shape.issues.map((one) => ({ ...one, path: [i, ...one.path] })));
  const note = textsFor(parsed.data, "commenting").join("\n");
  if (note.length > 500) return fail(malformed([i, "body"], "a comment of more than 500 characters"));
  return ok({ ...readTags(textsFor(parsed.data, "tagging")), shape: shape.value, note });
}

/** A body without a purpose has the annotation's motivation for one. */
function textsFor({ body, motivation }: ReadAnnotation, purpose: string): readonly string[] {
  return body.flatMap((one) => {
    const purposes = one.purpose ?? motivation ?? [];
    return one.value !== undefined && purposes.includes(purpose) ? [one.value] : [];
  });
}
