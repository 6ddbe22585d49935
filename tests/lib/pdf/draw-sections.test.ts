import { describe, expect, it } from "vitest";
import { assessBead } from "@/lib/assess";
import { sheetPdf } from "@/lib/pdf";
import { sheetDocument } from "@/lib/report";
import { imperfectionIds } from "@/lib/trade";
import { metric } from "@/lib/units";
import { facts, meltedFillet, sectionBead } from "../assess/section-bead";
import { plain, readPdf } from "./read-pdf";
import { inputFor, jpeg } from "./sheet-of";

const content = sectionBead(
  { ...meltedFillet, lookedFor: [...imperfectionIds], report: { etchant: "nital 2 %" } },
  { sectionSetId: "iso-9606-1-macro-fillet" },
);
const bead = {
  id: "b",
  number: 47,
  revision: 3,
  createdAt: "2026-11-26T10:00:00.000Z",
  content,
  photos: facts,
};
const sheet = sheetDocument(assessBead(bead), metric);

const squeezed = (text: string): string => plain(text).replaceAll(/\s/g, "");

describe("a sheet with a section, as PDF", () => {
  it("says every figure, every row, the report's words and the caution", async () => {
    const pages = await readPdf(await sheetPdf(inputFor(sheet, await jpeg())));
    const section = sheet.photos[0]!.section!;
    expect(section.figures.length).toBeGreaterThan(15);
    const text = squeezed(pages.map((page) => page.text).join(" "));
    const words = [
      "Section on photo 1",
      ...section.figures.flatMap(({ name, text: figure }) => [name, figure]),
      ...section.verdict!.clauses.map(({ title }) => title),
      section.verdict!.word,
      section.verdict!.criteria,
      "nital 2 %",
      section.caution,
    ];
    expect(words.filter((one) => !text.includes(squeezed(one)))).toEqual([]);
  });

  it("draws the weld alone a second time, larger: the toes are vectors in both pictures", async () => {
    const pages = await readPdf(await sheetPdf(inputFor(sheet, await jpeg())));
    expect(pages.reduce((sum, { images }) => sum + images, 0)).toBe(2);
    const [without] = await readPdf(
      await sheetPdf(
        inputFor({ ...sheet, photos: sheet.photos.map(({ section: _, ...photo }) => photo) }, await jpeg()),
      ),
    );
    const count = pages.reduce((sum, { pathPoints }) => sum + pathPoints.length, 0);
    expect(count).toBeGreaterThan(without!.pathPoints.length + 40);
  });

  it("is silent where there is none", () => {
    expect(
      sheetDocument(assessBead({ ...bead, content: sectionBead(null) }), metric).photos[0],
    ).not.toHaveProperty("section");
  });
});
