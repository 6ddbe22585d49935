import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { scenarioNames } from "./scenarios";

/** Puts the demo set, small, into one picture for the README: six to a row, the last row in the middle. */
const COLUMNS = 6;
const CELL = { width: 268, height: 201 } as const;
const GAP = 6;
const folder = fileURLToPath(new URL("./set/", import.meta.url));
/** Half of what the last row lacks. */
function indent(i: number): number {
  const inRow = Math.min(COLUMNS, scenarioNames.length - COLUMNS * Math.floor(i / COLUMNS));
  return Math.round(((COLUMNS - inRow) * (CELL.width + GAP)) / 2);
}

const cells = await Promise.all(
  scenarioNames.map(async (name, i) => ({
    input: await sharp(`${folder}${name}.jpg`).resize(CELL.width, CELL.height, { fit: "cover" }).toBuffer(),
    left: GAP + indent(i) + (i % COLUMNS) * (CELL.width + GAP),
    top: GAP + Math.floor(i / COLUMNS) * (CELL.height + GAP),
  })),
);
const rows = Math.ceil(scenarioNames.length / COLUMNS);
await sharp({
  create: {
    width: GAP + COLUMNS * (CELL.width + GAP),
    height: GAP + rows * (CELL.height + GAP),
    channels: 3,
    background: { r: 32, g: 34, b: 37 },
  },
})
  .composite(cells)
  .jpeg({ quality: 82 })
  .toFile(fileURLToPath(new URL("./contact-sheet.jpg", import.meta.url)));
