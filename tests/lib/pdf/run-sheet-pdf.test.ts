import { describe, expect, it } from "vitest";
import { runSheetPdf } from "@/lib/pdf";
import { planRun, PlanAskSchema, type PlanAsk } from "@/lib/plan";
import { runSheet } from "@/lib/report";
import { inch, metric } from "@/lib/units";
import { plain, readPdf } from "./read-pdf";

const short: Partial<PlanAsk> = {
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  joint: "tee",
  position: "horizontal",
  thicknessMm: 5,
  inputPower: "120V",
};
/** With gas, passes, notes and every figure: the most a sheet comes to hold. */
const long: Partial<PlanAsk> = {
  electrodeClass: "E308LT1-1/-4",
  electrodeDiameterMm: 1.2,
  gas: "75Ar-25CO2",
  joint: "tee",
  position: "vertical",
  progression: "up",
  thicknessMm: 10,
  targetLegMm: 14,
  inputPower: "400V-3ph",
  weldLengthMm: 1250,
  dials: "inch",
};

const sheetOf = (part: Partial<PlanAsk>) => {
  const ask = PlanAskSchema.parse(part);
  const planned = planRun(ask);
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  return runSheet(planned.value, ask, ask.dials === "inch" ? inch : metric);
};
const without = (text: string): string => plain(text.replaceAll("₂", "2")).replace(/\s+/g, "");

describe.each([
  ["a short sheet", short],
  ["a long sheet", long],
])("%s", (_, part) => {
  it("says everything on one A4 page, tagged, with the angles drawn, the same every time", async () => {
    const sheet = sheetOf(part);
    const make = () => runSheetPdf({ sheet, ink: "#14171c", createdAt: "2026-01-01T00:00:00.000Z" });
    const bytes = await make();
    expect(Buffer.from(await make()).equals(Buffer.from(bytes))).toBe(true);
    const pages = await readPdf(bytes);
    expect(pages).toHaveLength(1);
    const text = without(pages[0]!.text);
    const words = [
      sheet.line,
      sheet.pace.seconds,
      ...sheet.dials.flatMap(({ label, values, range }) => [label, ...values, range]),
      ...sheet.gives.flatMap(({ label, value }) => [label, value]),
      ...sheet.limits,
      ...sheet.cautions,
    ];
    expect(words.filter((one) => !text.includes(without(one)))).toEqual([]);
    expect(pages[0]!.tags).toContain("H1");
    expect(pages[0]!.tags.filter((tag) => tag === "Figure")).toHaveLength(sheet.drawings.length);
    const items = pages[0]!.items.filter((item) => item.text.trim() !== "");
    const over = items.flatMap((a, i) =>
      items
        .slice(i + 1)
        .filter((b) => Math.abs(a.y - b.y) < 5 && a.x < b.x + b.width - 1 && b.x < a.x + a.width - 1)
        .map((b) => `${a.text} | ${b.text}`),
    );
    expect(over).toEqual([]);
    for (const { x, y, width } of pages[0]!.items) {
      expect(x).toBeGreaterThanOrEqual(30);
      expect(x + width).toBeLessThanOrEqual(565);
      expect(y).toBeGreaterThanOrEqual(20);
    }
  });
});
