import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";

const root = path.resolve(import.meta.dirname, "..");

/**
 * Who may round a number otherwise than by the rounding table of lib/units, and what for. Everything that a person reads
 * as a quantity goes through the table: a new place here is no quantity, or this test is right.
 */
const others: Readonly<Record<string, string>> = {
  "lib/accept/formula.ts": "constants of a clause, as the code prints them",
  "lib/accept/shop-copy.ts": "a limit taken over into the shop's own set, stored",
  "lib/atlas/limit-words.ts": "constants of a clause, as the code prints them",
  "lib/cards/propose.ts": "the ends of a proposed range, stored",
  "lib/edge/follow-edge.ts": "size of a working pixel, three figures",
  "lib/exchange/mark-table.ts": "cells of a CSV, to 0.1 µm",
  "lib/inspect/extent-text.ts": "three figures of a share that may be very small",
  "lib/marks/scene-guides.ts": "the stated size of a scale object, as it was typed",
  "lib/measure/calibrate.ts": "data of a refusal, worded elsewhere",
  "lib/plan/inside.ts": "binary dust off a stored setting",
  "lib/section/measure-section.ts": "data of a refusal, worded elsewhere",
  "lib/strip/find-strip.ts": "data of a refusal, worded elsewhere",
  "app/groups/grade-tables.ts": "cells of a CSV",
  "components/bead/profile-chart.tsx": "coordinates of a drawing",
  "components/canvas-kit/view.ts": "what counts as the same magnification",
  "components/criteria/shop-row-fields.tsx": "a share as it is edited",
  "components/gauge/study-chart.tsx": "coordinates of a drawing",
  "components/report/compare-pictures.tsx": "magnification of a picture",
  "components/report/laid-transform.ts": "coordinates of a drawing",
  "components/report/ruler.tsx": "coordinates of a drawing",
  "components/trials/course-map.tsx": "coordinates of a drawing",
};

const isSource = (file: string): boolean => /\.tsx?$/.test(file) && !file.endsWith(".d.ts");
const rounds = (file: string): boolean =>
  /\.to(Fixed|Precision)\(|maximumFractionDigits|minimumFractionDigits/.test(
    readFileSync(path.join(root, file), "utf8"),
  );

it("only the rounding table decides how many decimals a person reads", () => {
  const files = ["lib", "components", "app"].flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: "utf8" })
      .filter(isSource)
      .map((file) => `${folder}/${file.replaceAll("\\", "/")}`),
  );
  const found = files.filter((file) => !file.startsWith("lib/units/") && rounds(file)).toSorted();
  expect(files.length).toBeGreaterThan(500);
  expect(found).toEqual(Object.keys(others).toSorted());
});
