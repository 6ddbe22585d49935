import { describe, expect, it } from "vitest";
import { canonicalJson } from "@/lib/base";
import {
  emptyFeedback,
  freezeFeedback,
  saysSomething,
  thawFeedback,
  type FeedbackContent,
} from "@/lib/course";
import { emptyDrawing } from "@/lib/marks";

const arrow = { id: "i1", kind: "arrow", from: { x: 1, y: 2 }, to: { x: 3, y: 4 }, words: "here" } as const;
const content: FeedbackContent = {
  ...emptyFeedback,
  layers: [
    { photoId: "p1", items: [arrow] },
    { photoId: "taken-off", items: [arrow] },
  ],
  marks: { toes: 2 },
  remark: "Slower at the end.",
};
const around = {
  handInId: "h1",
  exercise: { id: "e1", revision: 3, title: "Lap on 2 mm", aim: "Leg 4 mm" },
  bead: { id: "b1", number: 7, revision: 2 },
  authorId: "person1",
  returnedAt: "2026-11-25T10:00:00.000Z",
  rubric: [{ id: "toes", title: "Toes", weight: 4 }],
  photos: [
    {
      id: "p1",
      sha256: "a".repeat(64),
      role: "face" as const,
      widthPx: 800,
      heightPx: 600,
      drawing: emptyDrawing,
    },
  ],
};

describe("frozen feedback", () => {
  it("is canonical text that reads back to itself, with the score and without layers over nothing", () => {
    const text = freezeFeedback(content, around);
    const back = thawFeedback(text);
    expect(canonicalJson(back)).toBe(text);
    expect(back.score).toEqual({ points: 2, outOf: 4, open: 0, share: 0.5 });
    expect(back.layers.map(({ photoId }) => photoId)).toEqual(["p1"]);
  });

  it("is the same text whatever the order of keys", () => {
    const turned = Object.fromEntries(Object.entries(around).reverse()) as typeof around;
    expect(freezeFeedback(content, turned)).toBe(freezeFeedback(content, around));
  });

  it("has no field for a name: what is not in its schema does not get in", () => {
    const text = freezeFeedback(
      { ...content, student: "Ada" } as FeedbackContent,
      { ...around, student: "Ada" } as typeof around,
    );
    expect(text).not.toContain("Ada");
  });

  it("refuses a text of another version", () => {
    const text = freezeFeedback(content, around).replace('"schemaVersion":1', '"schemaVersion":9');
    expect(() => thawFeedback(text)).toThrow();
  });

  it("knows an empty answer", () => {
    expect(saysSomething(emptyFeedback)).toBe(false);
    expect(saysSomething({ ...emptyFeedback, remark: "  \n" })).toBe(false);
    expect(saysSomething({ ...emptyFeedback, layers: [{ photoId: "p1", items: [] }] })).toBe(false);
    expect(saysSomething(content)).toBe(true);
  });
});
