import { createHash } from "node:crypto";
import fc from "fast-check";
import { emptyBeadJudgement, photoRoles } from "@/lib/assess";
import type { ExchangeBead, ExchangePhoto } from "@/lib/exchange";
import { imperfectionIds } from "@/lib/trade";
import { arbDrawing } from "../../arbitraries";
import { setupArb } from "../setup/setup-arbitrary";

export const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** A bead and the bytes of its photos. */
export interface WholeBead {
  readonly bead: ExchangeBead;
  readonly photos: readonly Uint8Array[];
}

const arbTime = fc.integer({ min: 0, max: 4e9 }).map((s) => new Date(s * 1000).toISOString());
/** Whole code points: a lone surrogate is no text, and UTF-8 cannot carry one. */
const arbText = (maxLength: number) => fc.string({ unit: "binary", maxLength });
/** Titles are trimmed when they are taken in: generate what stays as it is. */
const arbTitle = arbText(60).map((text) => text.trim() || "Untitled bead");

interface PhotoParts {
  readonly bytes: Uint8Array;
  readonly role: ExchangePhoto["role"];
  readonly format: string;
  readonly size: readonly [number, number];
}
const photoOf = ({ bytes, role, format, size }: PhotoParts, i: number): ExchangePhoto => ({
  id: `p${i + 1}`,
  sha256: sha256(bytes),
  widthPx: size[0],
  heightPx: size[1],
  role,
  format,
  bytes: bytes.length,
});

const arbPhoto = fc.record({
  bytes: fc.uint8Array({ maxLength: 200 }),
  role: fc.constantFrom(...photoRoles),
  format: fc.constantFrom("jpeg", "png", "heif"),
  size: fc.tuple(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 1, max: 9000 })),
  drawing: arbDrawing,
});

export const arbWholeBead: fc.Arbitrary<WholeBead> = fc
  .record({
    number: fc.integer({ min: 1, max: 9999 }),
    revision: fc.integer({ min: 1, max: 50 }),
    createdAt: arbTime,
    updatedAt: arbTime,
    title: arbTitle,
    welder: fc.option(arbTitle, { nil: null }),
    note: arbText(80),
    setup: setupArb,
    lookedFor: fc.subarray([...imperfectionIds], { maxLength: 4 }),
    answers: fc.dictionary(fc.constantFrom("polarity-lugs", "fan-on", "__proto__", "7"), fc.constant("yes")),
    photos: fc.array(arbPhoto, { maxLength: 3 }),
  })
  .map(({ title, welder, note, setup, lookedFor, answers, photos, ...fixed }) => ({
    bead: {
      id: `bead-${fixed.number}`,
      ...fixed,
      previous: fixed.number % 2 ? { id: "bead-0", number: 3, title: "First try" } : null,
      content: {
        title,
        welder,
        setup,
        judgement: { ...emptyBeadJudgement, lookedFor, answers: plainAnswers(answers), note },
        photos: photos.map(({ role, drawing }, i) => ({ id: `p${i + 1}`, role, drawing })),
      },
      photos: photos.map(photoOf),
    },
    photos: photos.map(({ bytes }) => bytes),
  }));

/** Zod drops a key named "__proto__" on the way in, so no stored bead has one. */
function plainAnswers(answers: Record<string, string>): Record<string, string> {
  return Object.fromEntries(Object.entries(answers).filter(([key]) => key !== "__proto__"));
}

export const sampleBead = (): WholeBead => {
  const found = fc.sample(arbWholeBead, { numRuns: 60, seed: 7 }).find(({ photos }) => photos.length > 1);
  if (!found) throw new Error("no sample with photos");
  return found;
};
