import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent } from "@/lib/assess";
import { demoDrawing, DemoTruthSchema } from "@/lib/demo/drawing";
import { sheetDocument } from "@/lib/report";
import { inch, metric } from "@/lib/units";

const set = path.resolve(import.meta.dirname, "../../../demo-images/set");
const pictures = readdirSync(set)
  .filter((file) => file.endsWith(".json"))
  .map((file) => file.replace(".json", ""));

const METRIC = /\d ?(mm²?|cm|m\/min|mm\/min|L\/min|kJ\/mm|kg|°C)(?![a-z])/;
const INCH = /\d ?(in²?|in\/min|cfh|kJ\/in|lb|°F)(?![a-z])/;

function sheetOf(picture: string, units: typeof inch) {
  const truth = DemoTruthSchema.parse(JSON.parse(readFileSync(path.join(set, `${picture}.json`), "utf8")));
  const photo = { id: "p1", sha256: "0".repeat(64), widthPx: 4000, heightPx: 3000 };
  const content = {
    ...emptyBeadContent,
    setup: truth.setup,
    photos: [{ id: "p1", role: "face" as const, drawing: demoDrawing(truth) }],
  };
  const bead = { id: "b", number: 7, revision: 3, createdAt: "2026-11-25T08:00:00.000Z", content };
  return sheetDocument(assessBead({ ...bead, photos: [photo] }), units);
}

/** Every text of a sheet with where it stands; what is no text for a person (ids, digests, drawings) is left out. */
function texts(value: unknown, at = ""): readonly (readonly [string, string])[] {
  if (typeof value === "string") return [[at, value]];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    /^(scene|shapes|id|photos?Id|quantity|source)$/.test(key) ? [] : texts(part, `${at}/${key}`),
  );
}

describe.each(pictures)("the sheet of %s", (picture) => {
  it("speaks the units of its reader alone, the general cautions aside, which name both", () => {
    const leaks = (units: typeof inch, other: RegExp) =>
      texts(sheetOf(picture, units)).filter(([at, text]) => !at.startsWith("/cautions") && other.test(text));
    expect(texts(sheetOf(picture, inch)).filter(([, text]) => INCH.test(text)).length).toBeGreaterThan(2);
    expect(leaks(inch, METRIC)).toEqual([]);
    expect(leaks(metric, INCH)).toEqual([]);
  });
});
