import { ANNOTATION_CONTEXT, type AnnotationCollection, type Annotation } from "./annotation-types";
import type { ExchangeBead } from "./bead-file";
import { marksToAnnotations } from "./marks-to-annotations";
import { photoIri } from "./photo-iri";

/**
 * The marks of all photos of a bead as one W3C Web Annotation collection; each annotation names its own picture by
 * content. `iri` is the collection's; those of its annotations lie below it, photo by photo.
 */
export function beadAnnotations(
  { number, content, photos }: Pick<ExchangeBead, "number" | "content" | "photos">,
  iri: string,
): AnnotationCollection {
  const items = content.photos.flatMap(({ id, drawing }, i): readonly Annotation[] => {
    const facts = photos.find((photo) => photo.id === id);
    if (!facts) return [];
    const { sha256, widthPx, heightPx } = facts;
    const photo = { iri: photoIri(sha256), widthPx, heightPx };
    const collection = { iri: `${iri}/photo/${i + 1}`, label: "", joint: content.setup.joint };
    return marksToAnnotations(drawing.marks, photo, collection).first?.items ?? [];
  });
  return {
    "@context": ANNOTATION_CONTEXT,
    id: iri,
    type: "AnnotationCollection",
    label: `Bead ${number}: ${content.title}`,
    total: items.length,
    ...(items.length === 0
      ? {}
      : { first: { id: `${iri}/page/1`, type: "AnnotationPage", partOf: iri, startIndex: 0, items } }),
  };
}
