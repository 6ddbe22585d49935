/**
 * Rules of the Web Annotation Data Model (W3C Recommendation, 23 February 2017) as far as what we write comes under
 * them, put into JSON Schema by hand: 3.1 Annotations, 3.2.4 Embedded Textual Body, 3.3.5 Motivation and Purpose,
 * 4 Specific Resources, 4.2.7 SVG Selector, 5.1 Annotation Collection, 5.2 Annotation Page. The rules of 4.2.7 were
 * read; section numbers and the others are from memory.
 */
const iri = { type: "string", pattern: '^[A-Za-z][A-Za-z0-9+.-]*:[^\\s<>"{}|\\\\^`]*$' };

/** 3.3.5: the motivations the vocabulary defines. */
const motivation = {
  enum: [
    "assessing",
    "bookmarking",
    "classifying",
    "commenting",
    "describing",
    "editing",
    "highlighting",
    "identifying",
    "linking",
    "moderating",
    "questioning",
    "replying",
    "tagging",
  ],
};

const body = {
  type: "object",
  // 3.2.4: exactly one value; the class should be there; purpose is a motivation.
  required: ["type", "value"],
  properties: {
    type: { const: "TextualBody" },
    value: { type: "string" },
    purpose: motivation,
    format: { type: "string", pattern: "^[a-z]+/[a-z0-9.+-]+$" },
  },
  additionalProperties: false,
};

const selector = {
  type: "object",
  // 4.2.7: exactly one type, SvgSelector; the value is well-formed SVG. One shape, of these elements, without style.
  required: ["type", "value"],
  properties: {
    type: { const: "SvgSelector" },
    value: {
      type: "string",
      pattern:
        '^<svg xmlns="http://www\\.w3\\.org/2000/svg" viewBox="0 0 [0-9.]+ [0-9.]+"><(path|circle|polyline|polygon)( (d|cx|cy|r|points)="[^"<>&]*")+/></svg>$',
    },
  },
  additionalProperties: false,
};

const annotation = {
  type: "object",
  // 3.1: an IRI as id, the class, one or more targets.
  required: ["id", "type", "target"],
  properties: {
    id: iri,
    type: { const: "Annotation" },
    motivation,
    body: { type: "array", items: body },
    target: {
      type: "object",
      // 4: exactly one source, identified by its IRI.
      required: ["source"],
      properties: {
        type: { const: "SpecificResource" },
        source: {
          type: "object",
          required: ["id"],
          properties: { id: iri, type: { const: "Image" } },
          additionalProperties: false,
        },
        selector,
      },
      additionalProperties: false,
    },
  },
  additionalProperties: false,
};

const page = {
  type: "object",
  // 5.2: id, class, items; partOf its collection; startIndex not negative.
  required: ["id", "type", "items"],
  properties: {
    id: iri,
    type: { const: "AnnotationPage" },
    partOf: iri,
    startIndex: { type: "integer", minimum: 0 },
    items: { type: "array", items: annotation, minItems: 1 },
  },
  additionalProperties: false,
};

export const collectionSchema = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  type: "object",
  // 5.1: context, IRI, class; the first page where there is one; total not negative.
  required: ["@context", "id", "type"],
  properties: {
    "@context": { const: "http://www.w3.org/ns/anno.jsonld" },
    id: iri,
    type: { const: "AnnotationCollection" },
    label: { type: "string" },
    total: { type: "integer", minimum: 0 },
    first: page,
  },
  additionalProperties: false,
};
