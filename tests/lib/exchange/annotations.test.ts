import Ajv2020 from "ajv/dist/2020";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { marksToAnnotations } from "@/lib/exchange/marks-to-annotations";
import { photoIri } from "@/lib/exchange/photo-iri";
import { newMark, type Mark } from "@/lib/marks";
import { isoNumber, type Joint } from "@/lib/trade";
import { arbMark } from "../../arbitraries";
import { collectionSchema } from "./annotation-schema";
import { sha256 } from "./bead";
import { readSvg } from "./read-back";

const validate = new Ajv2020({ strict: true }).compile(collectionSchema);
const photo = { iri: photoIri(sha256(new Uint8Array([1, 2, 3]))), widthPx: 4032, heightPx: 3024 };
const collection = {
  iri: "urn:uuid:4f7d0d0e-8d2f-4c6a-9c57-0d6d0c1b2a39",
  label: "Bead 7, face",
  joint: "lap",
} as const;
const overJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** What each annotation says, in its own words. */
function toldBy(marks: readonly Mark[], joint: Joint | null = collection.joint) {
  const { first } = marksToAnnotations(marks, photo, { ...collection, joint });
  return (first?.items ?? []).map(({ body, target }) => {
    const texts = (purpose: string) =>
      body.filter((one) => one.purpose === purpose).map(({ value }) => value);
    const shape = readSvg(target.selector.value, photo.widthPx, photo.heightPx);
    return { source: target.source.id, tags: texts("tagging"), note: texts("commenting"), shape };
  });
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

  it("tell shapes, words and order; ids and gauge readings stay behind", () => {
    fc.assert(
      fc.property(fc.array(arbMark, { maxLength: 5 }), (marks) => {
        const expected = marks.map(({ imperfection, shape, place, stretch, patterns, note }) => {
          const number = isoNumber(imperfection, collection.joint);
          const tags = [
            number === null ? null : `ISO 6520-1 ${number}`,
            imperfection,
            place === null ? null : `place: ${place}`,
            stretch === null ? null : `stretch: ${stretch}`,
            ...patterns.map((pattern) => `pattern: ${pattern}`),
          ];
          return {
            source: photo.iri,
            tags: tags.filter((tag) => tag !== null),
            note: note ? [note] : [],
            shape,
          };
        });
        expect(toldBy(marks)).toEqual(expected);
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
    const tags = ([null, "tee", "groove-open"] as const).map((joint) => toldBy([mark], joint)[0]?.tags);
    expect(tags).toEqual([
      ["convex-bead"],
      ["ISO 6520-1 503", "convex-bead"],
      ["ISO 6520-1 502", "convex-bead"],
    ]);
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
