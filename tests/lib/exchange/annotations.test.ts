import Ajv2020 from "ajv/dist/2020";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { annotationsToMarks } from "@/lib/exchange/annotations-to-marks";
import { marksToAnnotations } from "@/lib/exchange/marks-to-annotations";
import { photoIri } from "@/lib/exchange/photo-iri";
import { MOST_MARKS, newMark, type Mark } from "@/lib/marks";
import { isoNumber } from "@/lib/trade";
import { arbMark } from "../../arbitraries";
import { collectionSchema } from "./annotation-schema";
import { sha256 } from "./bead";

const validate = new Ajv2020({ strict: true }).compile(collectionSchema);
const photo = { iri: photoIri(sha256(new Uint8Array([1, 2, 3]))), widthPx: 4032, heightPx: 3024 };
const collection = {
  iri: "urn:uuid:4f7d0d0e-8d2f-4c6a-9c57-0d6d0c1b2a39",
  label: "Bead 7, face",
  joint: "lap",
} as const;
const overJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

function importedFrom(marks: readonly Mark[]) {
  return annotationsToMarks(overJson(marksToAnnotations(marks, photo, collection)), photo);
}

describe("marks as Web Annotations", () => {
  it("keep to the recommendation's rules", () => {
    fc.assert(
      fc.property(fc.array(arbMark, { maxLength: 5 }), (marks) => {
        const json = overJson(marksToAnnotations(marks, photo, collection));
        expect([validate(json), validate.errors]).toEqual([true, null]);
        expect(json).toMatchObject({ total: marks.length });
      }),
    );
  });

  it("come back with the same shapes, words and order; ids and gauge readings stay behind", () => {
    fc.assert(
      fc.property(fc.array(arbMark, { maxLength: 5 }), (marks) => {
        const expected = marks.map(({ imperfection, shape, place, stretch, patterns, note }) => ({
          imperfection,
          iso6520: isoNumber(imperfection, collection.joint),
          shape,
          place,
          stretch,
          patterns,
          note,
        }));
        expect(importedFrom(marks)).toEqual({ ok: true, value: expected });
      }),
    );
  });

  it("carry the ISO 6520-1 number as a tag and the shape in photo pixels", () => {
    const mark = newMark("m1", "undercut", {
      kind: "line",
      points: [
        { x: 10.5, y: 20 },
        { x: 300, y: 21.25 },
      ],
    });
    const { first } = marksToAnnotations([mark], photo, collection);
    expect(first?.items[0]?.body[0]).toMatchObject({ purpose: "tagging", value: "ISO 6520-1 501" });
    expect(first?.items[0]?.target.selector.value).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4032 3024"><polyline points="10.5,20 300,21.25"/></svg>',
    );
  });

  it("number a convex bead by its joint, and not at all while the joint is unknown", () => {
    // ISO 6520-1: 502 excess weld metal (butt weld), 503 excessive convexity (fillet weld).
    const mark = newMark("m1", "convex-bead", { kind: "point", at: { x: 5, y: 6 }, radius: null });
    const numbers = ([null, "tee", "groove-open"] as const).map((joint) => {
      const json = overJson(marksToAnnotations([mark], photo, { ...collection, joint }));
      const read = annotationsToMarks(json, photo);
      return read.ok ? read.value.map(({ imperfection, iso6520 }) => [imperfection, iso6520]) : read.issues;
    });
    expect(numbers).toEqual([[["convex-bead", null]], [["convex-bead", "503"]], [["convex-bead", "502"]]]);
  });

  it("name the photo by its content as RFC 6920 does", () => {
    // RFC 6920, 8.1: "Hello World!". From memory.
    const hello = sha256(new TextEncoder().encode("Hello World!"));
    expect(photoIri(hello)).toBe("ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk");
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 8 }), (bytes) => {
        const digest = sha256(bytes);
        expect(photoIri(digest)).toBe(`ni:///sha-256;${Buffer.from(digest, "hex").toString("base64url")}`);
      }),
    );
  });
});

/** One annotation as somebody else might write it. */
const foreign = (over: Record<string, unknown> = {}, value = '<svg><circle cx="5" cy="6" r="2"/></svg>') => ({
  "@context": "http://www.w3.org/ns/anno.jsonld",
  id: "http://example.org/a1",
  type: "Annotation",
  target: { source: photo.iri, selector: { type: "SvgSelector", value } },
  ...over,
});

describe("annotations of others", () => {
  it("one annotation, string source, body without a purpose under a motivation, several classes", () => {
    const one = foreign({
      type: ["Annotation"],
      motivation: "tagging",
      body: [{ type: ["TextualBody"], value: "501" }, "http://example.org/elsewhere"],
    });
    expect(annotationsToMarks(one, photo)).toEqual({
      ok: true,
      value: [
        {
          imperfection: "undercut",
          iso6520: "501",
          place: null,
          stretch: null,
          patterns: [],
          note: "",
          shape: { kind: "point", at: { x: 5, y: 6 }, radius: 2 },
        },
      ],
    });
  });

  it.each(["502", "503"])("number %s alone means the convex bead", (value) => {
    const one = foreign({ body: { type: "TextualBody", purpose: "tagging", value } });
    expect(annotationsToMarks(one, photo)).toMatchObject({
      ok: true,
      value: [{ imperfection: "convex-bead", iso6520: value }],
    });
  });

  it("an unknown tag leaves the imperfection open for a person to say", () => {
    const one = foreign({ body: { type: "TextualBody", purpose: "tagging", value: "looks bad" } });
    expect(annotationsToMarks(one, photo)).toMatchObject({
      ok: true,
      value: [{ imperfection: null, iso6520: null }],
    });
  });

  const refusals: readonly (readonly [string, unknown, string])[] = [
    ["no annotation", { hello: 1 }, "annotation-malformed"],
    ["null", null, "annotation-malformed"],
    [
      "a page with something else on it",
      { type: "AnnotationPage", items: [{ type: "Note" }] },
      "annotation-malformed",
    ],
    ["two targets", foreign({ target: [foreign().target, foreign().target] }), "annotation-malformed"],
    ["a page that lies elsewhere", { type: "AnnotationCollection", total: 3 }, "annotation-malformed"],
    [
      "a following page",
      {
        type: "AnnotationCollection",
        first: { type: "AnnotationPage", items: [foreign()], next: "http://example.org/2" },
      },
      "annotation-malformed",
    ],
    [
      "another picture",
      foreign({ target: { ...foreign().target, source: "http://example.org/x.jpg" } }),
      "annotation-other-photo",
    ],
    [
      "another selector",
      foreign({
        target: { source: photo.iri, selector: { type: "FragmentSelector", value: "xywh=1,1,2,2" } },
      }),
      "annotation-selector",
    ],
    [
      "too many",
      { type: "AnnotationPage", items: Array.from({ length: MOST_MARKS + 1 }, () => foreign()) },
      "annotations-too-many",
    ],
    ["a script in a shape", foreign({}, "<svg><script>x</script></svg>"), "svg-unreadable"],
  ];
  it.each(refusals)("%s is refused", (_, json, code) => {
    const result = annotationsToMarks(json, photo);
    expect(result.ok ? [] : result.issues.map((found) => found.code)).toEqual([code]);
  });

  it("takes any picture when none is asked for", () => {
    const one = foreign({ target: { ...foreign().target, source: { id: "http://example.org/x.jpg" } } });
    expect(annotationsToMarks(one, { ...photo, iri: null }).ok).toBe(true);
  });
});
