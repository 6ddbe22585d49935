import { expect, it } from "vitest";
import { bulkWords } from "@/components/beads/bulk-words";

const asked = [1, 2, 3, 4, 5, 6, 7].map((number) => ({ id: `b${number}`, number }));
const some = (...numbers: readonly number[]) => numbers.map((number) => ({ id: `b${number}` }));
const signed = "A signed record speaks of this bead, so it stays as it is.";

it("says what was done by number", () => {
  expect(bulkWords("deleted", { done: some(4), refused: [] }, asked)).toBe("Bead 4 deleted.");
  expect(bulkWords("filed", { done: some(1, 2, 7), refused: [] }, asked)).toBe("Beads 1, 2 and 7 filed.");
  expect(bulkWords("deleted", { done: some(1, 2, 3, 4, 5, 6), refused: [] }, asked)).toBe("6 beads deleted.");
});

it("says what was not, and why, each reason once", () => {
  const refused = [
    { id: "b3", why: signed },
    { id: "b4", why: signed },
    { id: "b5", why: "It was handed in." },
  ];
  expect(bulkWords("deleted", { done: some(1), refused }, asked)).toBe(
    `Bead 1 deleted. Not deleted: beads 3 and 4. Of each: ${signed} Not deleted: bead 5. It was handed in.`,
  );
  expect(bulkWords("brought back", { done: [], refused: [refused[2]!] }, asked)).toBe(
    "Nothing was brought back. Not brought back: bead 5. It was handed in.",
  );
});

it("leaves no bead unsaid", () => {
  const words = bulkWords(
    "deleted",
    { done: some(1, 2), refused: some(3, 5).map((one) => ({ ...one, why: signed })) },
    asked.slice(0, 5),
  );
  for (const number of [1, 2, 3, 5]) expect(words).toMatch(new RegExp(`\\b${number}\\b`));
});
