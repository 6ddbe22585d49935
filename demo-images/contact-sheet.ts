import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { scenarioNames } from "./scenarios";

/** Puts the demo set, small, into one picture for the README: five to a row. */
const COLUMNS = 5;
const CELL = { width: 320, height: 240 } as const;
const GAP = 6;
const folder = fileURLToPath(new URL("./set/", import.meta.url));
const cells = await Promise.all(
  scenarioNames.map(async (name, i) => ({
    input: await sharp(`${folder}${name}.jpg`).resize(CELL.width, CELL.height, { fit: "cover" }).toBuffer(),
    left: GAP + (i % COLUMNS) * (CELL.width + GAP),
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
