import fc from "fast-check";
import { expect, it } from "vitest";
import { smallPhotoSentence } from "@/lib/report";

it("says of a small photo how small it is, and of none that a phone takes", () => {
  expect(smallPhotoSentence({ widthPx: 100, heightPx: 68 })).toContain("100 × 68 pixels");
  expect(smallPhotoSentence({ widthPx: 4032, heightPx: 3024 })).toBeNull();
});

it("goes by the longer side, however the photo is held", () => {
  const side = fc.integer({ min: 16, max: 9000 });
  fc.assert(
    fc.property(side, side, (a, b) => {
      const said = smallPhotoSentence({ widthPx: a, heightPx: b });
      expect(said === null).toBe(smallPhotoSentence({ widthPx: b, heightPx: a }) === null);
      expect(said === null).toBe(Math.max(a, b) >= 900);
    }),
    { seed: 9, numRuns: 200 },
  );
});
