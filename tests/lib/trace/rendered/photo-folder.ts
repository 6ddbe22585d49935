import { existsSync, readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import sharp from "sharp";
import { z } from "zod";
import type { Pixel } from "@/demo-images";
import { distance, type Point } from "@/lib/geometry";
import type { Pixels, ReadStrip, ReadWhole } from "@/lib/trace";
import { studyAsked, type Asked, type StudiedPicture } from "./study-picture";

const Place = z.tuple([z.number(), z.number()]);

/**
 * What lies beside each photograph under its name and `.json`. Places are [x, y] in pixels of the upright photograph from
 * the upper left corner of its first pixel.
 */
export const LabelSchema = z.strictObject({
  /** The weld's middle from start to crater as a person picks it; more than two places where it is curved. */
  weldLine: z.array(Place).min(2),
  /** One toe from start to crater, and the other; their places need not face each other. */
  upper: z.array(Place).min(2),
  lower: z.array(Place).min(2),
  /** Millimetres to a pixel at the bead, where known: nothing is judged by it, widths are printed in mm beside. */
  mmPerPx: z.number().positive().nullish(),
  /** Outlines of metal rolled over a toe. */
  rolled: z.array(z.array(Place).min(3)).default([]),
  /** How many beads are in the photograph. */
  beads: z.number().int().min(1).default(1),
});
export type Label = z.infer<typeof LabelSchema>;

export interface LabelledPhoto {
  readonly name: string;
  readonly image: Pixels;
  readonly label: Label;
}

const PICTURES = [".jpg", ".jpeg", ".png", ".webp"];

/** The photographs of a folder that have a label beside them. Throws, with the file's name, where a label is not whole. */
async function* labelledPhotos(folder: string): AsyncGenerator<LabelledPhoto> {
  const names = readdirSync(folder).filter((name) => PICTURES.includes(extname(name).toLowerCase()));
  for (const name of names.toSorted()) {
    const beside = join(folder, `${name.slice(0, -extname(name).length)}.json`);
    if (!existsSync(beside)) {
      console.error(`${name}: no label beside it, left out`);
      continue;
    }
    const label = LabelSchema.safeParse(JSON.parse(readFileSync(beside, "utf8")));
    if (!label.success) throw new Error(`${beside}: ${z.prettifyError(label.error)}`);
    yield { name, image: await pixelsOfFile(join(folder, name)), label: label.data };
  }
}

/** Upright, as the app stores photographs. */
async function pixelsOfFile(file: string): Promise<Pixels> {
  const { data, info } = await sharp(file).rotate().toColourspace("srgb").ensureAlpha().raw().toBuffer({
    resolveWithObject: true,
  });
  return { width: info.width, height: info.height, data };
}

/** Traces every labelled photograph of a folder along its weld line, and asks where a line would be proposed. */
export async function studyFolder(
  folder: string,
  read: ReadStrip,
  readWhole: ReadWhole | null,
): Promise<readonly StudiedPicture[]> {
  const studied: (StudiedPicture | null)[] = [];
  for await (const photo of labelledPhotos(folder))
    studied.push(await studyAsked("photographs", studied.length, read, readWhole, askedOf(photo)));
  return studied.filter((one) => one !== null);
}

export function askedOf({ name, image, label }: LabelledPhoto): Asked {
  const { weldLine, upper, lower, rolled, beads, mmPerPx } = label;
  const picked = weldLine.map(([x, y]) => ({ x, y }));
  const [left, right] = [evenly(upper, picked), evenly(lower, picked)];
  const wide = left.reduce((sum, p, i) => sum + apart(p, right[i]!), 0) / left.length;
  const scenario = mmPerPx ? `${name}, ${(wide * mmPerPx).toFixed(1)} mm` : name;
  return { scenario, image, beads, left, right, picked, rolls: rolled };
}

const apart = ([ax, ay]: Pixel, [bx, by]: Pixel): number => Math.hypot(ax - bx, ay - by);

const PLACES = 200;

/** A labelled toe in places an even way apart, from the weld line's first end on, so that both toes face each other. */
function evenly(toe: readonly Pixel[], picked: readonly Point<"photo">[]): readonly Pixel[] {
  const far = ([x, y]: Pixel): number => distance({ x, y }, picked[0]!);
  const line = far(toe[0]!) <= far(toe[toe.length - 1]!) ? toe : toe.toReversed();
  const sums = [0];
  for (let i = 1; i < line.length; i++) sums.push(sums[i - 1]! + apart(line[i - 1]!, line[i]!));
  const long = sums[sums.length - 1]!;
  let k = 0;
  return Array.from({ length: PLACES }, (_, i): Pixel => {
    const at = (long * i) / (PLACES - 1);
    while (k + 2 < sums.length && sums[k + 1]! < at) k++;
    const share = (at - sums[k]!) / Math.max(1e-9, sums[k + 1]! - sums[k]!);
    const [[ax, ay], [bx, by]] = [line[k]!, line[k + 1]!];
    return [ax + (bx - ax) * share, ay + (by - ay) * share];
  });
}
