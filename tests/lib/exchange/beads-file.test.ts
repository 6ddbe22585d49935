import Ajv2020 from "ajv/dist/2020";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  archiveManifest,
  beadsFileJsonSchema,
  BeadsFileSchema,
  beadsFileText,
  exchangeSentence,
  type ExchangeBead,
} from "@/lib/exchange";
import { parseManifest, serialiseManifest } from "@/lib/exchange/archive-manifest";
import { serialiseBeadsFile } from "@/lib/exchange/beads-file";
import { canonicalJson } from "@/lib/base";
import { exchangeIssueCodes } from "@/lib/exchange/issue";
import { exchangeSentences } from "@/lib/exchange/sentences";
import type { BeadRecord } from "@/lib/beads";
import { arbWholeBead, sampleBead } from "./bead";

/** An independent validator of JSON Schema, draft 2020-12. Formats are also given as patterns, so names are enough. */
const validate = new Ajv2020({ strict: true, validateFormats: false, allowUnionTypes: true }).compile(
  beadsFileJsonSchema(),
);
const parsed = (text: string): unknown => JSON.parse(text);

/** Every place in a JSON document, as a path. */
function places(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, part]) => places(part, [...path, key]))];
}
function replaced(value: unknown, [key, ...rest]: readonly (string | number)[], by: unknown): unknown {
  if (key === undefined) return by;
  if (Array.isArray(value))
    return value.map((part, i) => (String(i) === String(key) ? replaced(part, rest, by) : part));
  const record = value as Record<string, unknown>;
  return { ...record, [key]: replaced(record[key], rest, by) };
}

/** Checked by the compiler: a stored bead leaves as it is, but for whom and what it belongs to in this shop. */
type Belonging = "welderId" | "jobId" | "weldId" | "handInId";
const leaves: (record: Omit<BeadRecord, Belonging>) => ExchangeBead = (record) => record;

describe("a file of beads", () => {
  it("takes a stored bead without a translation", () => {
    const { bead } = sampleBead();
    expect(leaves(bead)).toBe(bead);
  });

  it("comes back as it left, and its text is always the same", () => {
    fc.assert(
      fc.property(arbWholeBead, ({ bead }) => {
        const text = serialiseBeadsFile([bead]);
        const back = BeadsFileSchema.parse(parsed(text));
        expect(back.beads).toEqual([bead]);
        expect(serialiseBeadsFile(back.beads)).toBe(text);
      }),
    );
  });

  it("fits the published schema by an independent validator", () => {
    fc.assert(
      fc.property(arbWholeBead, ({ bead }) => {
        expect(validate(parsed(serialiseBeadsFile([bead])))).toBe(true);
      }),
    );
  });

  it("a value of another kind anywhere is refused by both, the published schema and our own", () => {
    const whole = parsed(serialiseBeadsFile([sampleBead().bead]));
    const all = places(whole);
    expect(all.length).toBeGreaterThan(80);
    for (const path of all) {
      // A list where there is none, a number of the wrong kind where there is a list.
      const here = path.reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], whole);
      const wrong = replaced(whole, path, Array.isArray(here) ? 0.5 : [[]]);
      expect([path, validate(wrong), BeadsFileSchema.safeParse(wrong).success]).toEqual([path, false, false]);
    }
  });

  it("says its dialect", () => {
    expect(beadsFileJsonSchema().$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  });
});

describe("refusals of an archive's list", () => {
  const text = () =>
    parsed(serialiseManifest(archiveManifest([sampleBead().bead], "a".repeat(64)))) as Record<
      string,
      unknown
    >;
  const codes = (json: unknown) => {
    const result = parseManifest(JSON.stringify(json));
    return result.ok ? [] : result.issues.map(({ code }) => code);
  };
  const withPhotos = (photos: ExchangeBead["photos"]) => replaced(text(), ["beads", 0, "photos"], photos);

  it("no JSON, no version, a later version", () => {
    expect(codes(text())).toEqual([]);
    expect(parseManifest("{")).toMatchObject({ ok: false, issues: [{ code: "not-json" }] });
    expect(codes({ beads: [] })).toEqual(["version-missing"]);
    expect(codes([])).toEqual(["version-missing"]);
    expect(codes({ ...text(), schemaVersion: 99 })).toEqual(["version-newer"]);
  });

  it("a malformed value, with its place", () => {
    const path = ["beads", 0, "photos", 0, "sha256"];
    expect(parseManifest(JSON.stringify(replaced(text(), path, "abc")))).toMatchObject({
      ok: false,
      issues: [{ code: "malformed", path }],
    });
  });

  it("marks for a photo that is not described, and ids that stand twice", () => {
    const [first, second] = sampleBead().bead.photos;
    if (!first || !second) throw new Error("sample has two photos");
    expect(codes(withPhotos([first]))).toContain("photo-unlisted");
    expect(codes(withPhotos([first, first, second]))).toContain("id-twice");
  });
});

describe("canonical JSON", () => {
  it("does not depend on the order of keys, and says the same as the value", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
        const turned = Object.fromEntries(Object.entries(value).reverse());
        expect(canonicalJson(turned)).toBe(canonicalJson(value));
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });
});

describe("sentences", () => {
  it("there is one for every code, and each says what to do or what was not done", () => {
    expect(Object.keys(exchangeSentences).sort()).toEqual([...exchangeIssueCodes].sort());
    for (const sentence of Object.values(exchangeSentences)) expect(sentence({})).toMatch(/\.$/);
    expect(exchangeSentence({ code: "version-newer", path: [], data: { found: 9, known: 1 } })).toContain(
      "9",
    );
  });
});

it("a file of beads in slices of any size is the text of the whole", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(arbWholeBead, { maxLength: 4 }),
      fc.integer({ min: 1, max: 3 }),
      async (whole, size) => {
        const beads = whole.map(({ bead }) => bead);
        const slices = [];
        for (let from = 0; from < beads.length; from += size) slices.push(beads.slice(from, from + size));
        let text = "";
        for await (const part of beadsFileText(slices)) text += part;
        expect(text).toBe(serialiseBeadsFile(beads));
      },
    ),
    { numRuns: 60, seed: 2 },
  );
});
