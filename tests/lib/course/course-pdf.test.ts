import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { palette } from "@/components/picture";
import { layerInk } from "@/components/picture";
import {
  classCounts,
  emptyFeedback,
  freezeFeedback,
  thawFeedback,
  wallPage,
  type ClassBead,
} from "@/lib/course";
import { emptyDrawing, type Mark } from "@/lib/marks";
import { classPdf, feedbackPdf } from "@/lib/pdf";
import { readPdf } from "../pdf/read-pdf";

const out = fileURLToPath(new URL("../../.out/pdf", import.meta.url));
const sha = "b".repeat(64);
const [widthPx, heightPx] = [1200, 900];
const mark: Mark = {
  id: "m",
  imperfection: "undercut",
  shape: {
    kind: "line",
    points: [
      { x: 200, y: 500 },
      { x: 500, y: 505 },
    ],
  },
  place: "upper-toe",
  stretch: "run",
  patterns: [],
  gauge: [],
  note: "",
};

function returned(photos: number) {
  const id = (i: number) => `p${i}`;
  const list = Array.from({ length: photos }, (_, i) => i);
  const text = freezeFeedback(
    {
      ...emptyFeedback,
      layers: list.map((i) => ({
        photoId: id(i),
        items: [
          {
            id: "a",
            kind: "arrow",
            from: { x: 600, y: 250 },
            to: { x: 350, y: 490 },
            words: "Too fast here",
          },
          { id: "t", kind: "text", at: { x: 900, y: 700 }, words: "Fill the crater before you lift off" },
        ],
      })),
      marks: { toes: 2, size: 4 },
      quick: ["Keep the stick-out even."],
      remark: "Better than last week.\nNow the end.",
    },
    {
      handInId: "h",
      exercise: { id: "e", revision: 1, title: "T-joint, one pass", aim: "Leg 5 mm, even toes." },
      bead: { id: "b", number: 7, revision: 2 },
      authorId: null,
      returnedAt: "2026-11-25T10:00:00.000Z",
      rubric: [
        { id: "size", title: "Size and profile", weight: 3 },
        { id: "toes", title: "Toes", weight: 3 },
      ],
      photos: list.map((i) => ({
        id: id(i),
        sha256: sha,
        role: "face" as const,
        widthPx,
        heightPx,
        drawing: { ...emptyDrawing, marks: [mark] },
      })),
    },
  );
  return thawFeedback(text);
}

async function paper(photos: number, missing = false) {
  const jpeg = await sharp({ create: { width: 600, height: 450, channels: 3, background: "#7a7f88" } })
    .jpeg()
    .toBuffer();
  return feedbackPdf({
    returned: returned(photos),
    digest: "c".repeat(64),
    student: "Imke Tal",
    day: "25 November 2026",
    reply: "I will wait at the crater.",
    photos: missing ? new Map() : new Map([[sha, new Uint8Array(jpeg)]]),
    palette,
    layerInk,
    recordUrl: "http://localhost/feedback/h",
  });
}

/** For people who look. */
function keep(name: string, bytes: Uint8Array): void {
  mkdirSync(out, { recursive: true });
  writeFileSync(path.join(out, name), bytes);
}

describe("the feedback sheet as a PDF", () => {
  it("holds the photo, both layers as vectors, rubric, remarks and reply, tagged", async () => {
    const bytes = await paper(1);
    keep("feedback.pdf", bytes);
    const pages = await readPdf(bytes);
    const text = pages.map((page) => page.text).join(" ");
    for (const words of [
      "Too fast here",
      "Fill the crater",
      "Keep the stick-out even.",
      "Better than last week.",
      "Toes 3 2 of 4, half way",
      // 3·4/4 + 3·2/4 = 4.5 of 6.
      "4.5 of 6 (75 %)",
      "I will wait at the crater.",
      "Acceptance belongs to the governing code",
      "page 1 of",
      "c".repeat(64),
    ])
      expect(text).toContain(words);
    expect(pages[0]?.images).toBe(1);
    expect(pages[0]?.tags).toEqual(expect.arrayContaining(["H1", "Figure", "Caption"]));
    expect(pages.flatMap(({ tags }) => tags)).toEqual(expect.arrayContaining(["H2", "Table", "TH"]));
    // The arrow's tip and the student's mark lie as lines where the photo's pixels say: one scale, one corner.
    const scale = Math.min(515.28 / widthPx, 330 / heightPx);
    const lengths = (from: { x: number; y: number }, to: { x: number; y: number }) =>
      Math.hypot(from.x - to.x, from.y - to.y) * scale;
    const { pathPoints } = pages[0]!;
    const found = (want: number) =>
      pathPoints.some((p, i) => {
        const q = pathPoints[i + 1];
        return q !== undefined && Math.abs(Math.hypot(p.x - q.x, p.y - q.y) - want) < 0.01;
      });
    expect(found(lengths({ x: 600, y: 250 }, { x: 350, y: 490 }))).toBe(true);
    expect(found(lengths({ x: 200, y: 500 }, { x: 500, y: 505 }))).toBe(true);
  });

  it("goes on over pages with 30 photos, and is the same file each time", async () => {
    const bytes = await paper(30);
    expect(Buffer.from(bytes).equals(Buffer.from(await paper(30)))).toBe(true);
    const pages = await readPdf(bytes);
    expect(pages.reduce((sum, { images }) => sum + images, 0)).toBe(30);
    expect(pages.at(-1)?.text).toContain(`page ${pages.length} of ${pages.length}`);
  });

  it("says when a picture is missing", async () => {
    const [page] = await readPdf(await paper(1, true));
    expect(page?.text).toContain("The picture is missing.");
    expect(page?.images).toBe(0);
  });
});

describe("the page for the wall as a PDF", () => {
  it("is one page of counts with intervals", async () => {
    const bead = (i: number): ClassBead => ({
      handInId: `h${i}`,
      beadId: `b${i}`,
      student: `s${i % 4}`,
      exerciseId: "e",
      imperfections: i % 2 ? ["undercut", "spatter"] : ["overlap"],
      looked: true,
      cause: i % 2 ? { id: "travel-fast", name: "Travel too fast" } : null,
      verdict: i % 3 ? "reject" : "accept",
      returned: true,
      score: i / 8,
    });
    const content = wallPage(classCounts([1, 2, 3, 4, 5, 6, 7].map(bead)), {
      title: "T-joint, one pass",
      group: "Harrow Basin, bay 3",
      aim: "Leg 5 mm.",
      day: "25 November 2026",
      handedIn: 4,
      members: 5,
    });
    const bytes = await classPdf({
      content,
      digest: "d".repeat(64),
      recordUrl: "http://localhost/exercises/e",
      ink: palette.text,
      createdAt: "2026-11-25T10:00:00.000Z",
    });
    keep("class.pdf", bytes);
    const pages = await readPdf(bytes);
    expect(pages).toHaveLength(1);
    for (const words of ["4 of 5", "Undercut", "4 of 7", "95 % interval", "Travel too fast"])
      expect(pages[0]?.text).toContain(words);
    expect(pages[0]?.tags).toEqual(expect.arrayContaining(["H1", "Table", "TH"]));
  });
});
