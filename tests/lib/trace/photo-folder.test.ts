import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import { afterAll, describe, expect, it } from "vitest";
import type { Pixels } from "@/lib/trace";
import { itDeep } from "../../setup/in-depth";
import { PATIENT_MS } from "../../setup/patience";
import { drawnBead, flawless } from "./drawn";
import { nodeReader } from "./node-reader";
import { studyFolder, type Label } from "./rendered/photo-folder";
import { tracePicture } from "./rendered/pictures";
import { studyPicture, type StudiedPicture } from "./rendered/study-picture";
import { photoTables } from "./rendered/tables";

const folders: string[] = [];
afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true })));

async function folderOf(photos: readonly (readonly [Pixels, unknown])[]): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "labelled-"));
  folders.push(folder);
  for (const [i, [{ width, height, data }, label]] of photos.entries()) {
    await sharp(data, { raw: { width, height, channels: 4 } })
      .png()
      .toFile(join(folder, `weld ${i}.png`));
    if (label !== null) writeFileSync(join(folder, `weld ${i}.json`), JSON.stringify(label));
  }
  return folder;
}

const bead = (x: number): readonly [number, number] | null => (x < 90 || x > 810 ? null : [265, 335]);

/** The drawn bead with its toes labelled `out` px too far out, the lower one from the other end. */
const label = (out: number): Label => ({
  weldLine: [
    [95, 300],
    [805, 300],
  ],
  upper: [
    [90, 265 - out],
    [810, 265 - out],
  ],
  lower: [
    [810, 335 + out],
    [400, 335 + out],
    [90, 335 + out],
  ],
  rolled: [],
  beads: 1,
});

const bias = ({ stations }: StudiedPicture): number =>
  stations.reduce((sum, [upper, lower]) => sum + upper + lower, 0) / stations.length;

describe("labelled photographs of a folder", () => {
  it("are read against their labels, each with its own error", async () => {
    const image = drawnBead(900, 600, bead);
    const folder = await folderOf([
      [image, label(0)],
      [image, label(7)],
      [image, null],
    ]);
    const studied = await studyFolder(folder, flawless, null);
    expect(studied.map(({ refused }) => refused)).toEqual([null, null]);
    expect(Math.abs(bias(studied[0]!))).toBeLessThan(0.02);
    // A label 14 px wider than the bead of 70 px: a fifth too narrow was read.
    expect(bias(studied[1]!)).toBeCloseTo(-0.2, 1.5);
    const said = photoTables(studied, "2026-11-27");
    // Off by 7 of 70 px at each toe.
    expect(said).toMatch(/\| weld 1\.png \| 84 \| (9\.9|10\.0)\d % \| -(19\.9|20\.0) % \| not asked \|/);
    expect(said).not.toContain("NaN");
    expect(said).not.toContain("render");
  });

  it("with a label that is not whole name the file", async () => {
    const folder = await folderOf([[drawnBead(900, 600, bead), { ...label(0), upper: [[1, 2]] }]]);
    await expect(studyFolder(folder, flawless, null)).rejects.toThrow(/weld 0\.json[^]*upper/);
  });

  itDeep(
    "made of a render give the render's own figures",
    async () => {
      const read = await nodeReader();
      const picture = tracePicture("kept-plain", 3);
      const known = (await studyPicture("kept-plain", 3, read, null, picture))!;
      const weldLine = picture.picked!.map(({ x, y }) => [x, y]);
      const folder = await folderOf([
        [picture.image, { weldLine, upper: picture.left, lower: picture.right }],
      ]);
      const [studied] = await studyFolder(folder, read, null);
      expect(studied!.stations.length).toBe(known.stations.length);
      expect(Math.abs(bias(studied!) - bias(known))).toBeLessThan(0.002);
    },
    4 * PATIENT_MS,
  );
});
