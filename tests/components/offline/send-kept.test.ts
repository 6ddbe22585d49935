import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { KeptPhoto } from "@/components/offline/kept";
import { sendKept, type Doors } from "@/components/offline/send-kept";
import { emptyBeadContent } from "@/lib/assess";
import { ok, refused } from "@/lib/base";

const facts = { sha256: "a".repeat(64), widthPx: 10, heightPx: 10 };
const photoOf = (id: string, at: number): KeptPhoto => ({
  ...{
    id,
    beadId: "b",
    by: "owner",
    role: "face",
    name: id,
    file: new Blob(),
    size: null,
    at,
    refused: null,
  },
});

/** Doors that note who knocked, and answer as told. */
function doors(answers: { readonly torn: readonly string[]; readonly awayAfter: number }) {
  const knocked: string[] = [];
  const through = (name: string) => {
    knocked.push(name);
    return knocked.length > answers.awayAfter ? refused("unreachable", "No answer.") : null;
  };
  const made: Doors = {
    make: async () => through("make") ?? ok({ number: 3, title: "Bead 3" }),
    sendPhoto: async ({ id }) =>
      through(`photo ${id}`) ??
      (answers.torn.includes(id)
        ? refused("photo-damaged", "Torn.")
        : ok({ photo: { ...facts, id }, said: [] })),
    save: async (_, basedOn, { title }) =>
      through(`save ${basedOn} ${title}`) ?? ok({ revision: basedOn + 1 }),
  };
  return { knocked, made };
}

describe("the order in which one bead goes out", () => {
  it("is the bead, its photos as they were taken, then what is said of them; and it stops where nobody answers", async () => {
    const photos = fc.uniqueArray(fc.constantFrom("a", "b", "c", "d"), { maxLength: 4 });
    await fc.assert(
      fc.asyncProperty(photos, photos, fc.nat(7), fc.boolean(), async (ids, torn, awayAfter, isNew) => {
        const { knocked, made } = doors({ torn, awayAfter });
        const waiting = ids.map(photoOf);
        const told: string[] = [];
        const answer = await sendKept(
          { beadId: "b", isNew, madeAs: null, basedOn: 0, content: emptyBeadContent, photos: () => waiting },
          made,
          {
            made: () => void told.push("made"),
            taken: ({ id }) => void told.push(`taken ${id}`),
            refused: ({ id }) => void told.push(`refused ${id}`),
          },
        );
        const title = isNew ? "Bead 3" : emptyBeadContent.title;
        const whole = [...(isNew ? ["make"] : []), ...ids.map((id) => `photo ${id}`), `save 1 ${title}`];
        expect(knocked).toEqual(whole.slice(0, awayAfter + 1));
        expect(answer.ok).toBe(awayAfter >= whole.length);
        const done = whole.slice(0, awayAfter).filter((name) => !name.startsWith("save"));
        expect(told).toEqual(
          done.map((name) => {
            const id = name.slice("photo ".length);
            return name === "make"
              ? "made"
              : `${(torn as readonly string[]).includes(id) ? "refused" : "taken"} ${id}`;
          }),
        );
      }),
      { seed: 20261126 },
    );
  });
});
