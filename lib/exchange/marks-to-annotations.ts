import type { Mark } from "@/lib/marks";
import { imperfections, type Joint } from "@/lib/trade";
import { tagsOf } from "./annotation-tags";
import {
  ANNOTATION_CONTEXT,
  type Annotation,
  type AnnotationCollection,
  type TextualBody,
} from "./annotation-types";
import { shapeToSvg, type Frame } from "./shape-to-svg";

/** The picture the marks lie on. */
export interface AnnotatedPhoto extends Frame {
  /** IRI of the picture; `photoIri` makes one from its content. */
  readonly iri: string;
}

export interface CollectionOptions {
  /** IRI of the collection; page and annotations get IRIs below it. */
  readonly iri: string;
  readonly label: string;
  /** Some shapes have one ISO 6520-1 number in a fillet and another in a butt weld; null: not recorded. */
  readonly joint: Joint | null;
}

const body = (purpose: TextualBody["purpose"], value: string): TextualBody => ({
  type: "TextualBody",
  purpose,
  format: "text/plain",
  value,
});

/**
 * The marks of one photo as a W3C Web Annotation collection with its one page embedded. Shapes stand in photo pixels,
 * numbered as on the photo. Gauge readings and the marks' own ids stay behind: they travel in a bead file.
 */
export function marksToAnnotations(
  marks: readonly Mark[],
  photo: AnnotatedPhoto,
  { iri, label, joint }: CollectionOptions,
): AnnotationCollection {
  const items = marks.map((mark, i): Annotation => ({
    id: `${iri}/mark/${i + 1}`,
    type: "Annotation",
    motivation: "tagging",
    body: [
      ...tagsOf(mark, joint).map((tag) => body("tagging", tag)),
      body("describing", imperfections[mark.imperfection].name),
      ...(mark.note === "" ? [] : [body("commenting", mark.note)]),
    ],
    target: {
      type: "SpecificResource",
      source: { id: photo.iri, type: "Image" },
      selector: { type: "SvgSelector", value: shapeToSvg(mark.shape, photo) },
    },
  }));
  return {
    "@context": ANNOTATION_CONTEXT,
    id: iri,
    type: "AnnotationCollection",
    label,
    total: items.length,
    ...(items.length === 0
      ? {}
      : { first: { id: `${iri}/page/1`, type: "AnnotationPage", partOf: iri, startIndex: 0, items } }),
  };
}
