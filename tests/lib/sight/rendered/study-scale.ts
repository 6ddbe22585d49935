import { readdirSync, readFileSync } from "node:fs";
import sharp from "sharp";
import type { Truth } from "@/demo-images/truth";
import { distance, type Point } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import { calibrate, defaultMeasureOptions, mapPoint, type Calibration } from "@/lib/measure";
import { scaleOfSeen, seenScale } from "@/lib/sight";
import type { RgbaImage } from "@/lib/strip";

const folder = new URL("../../../../demo-images/set/", import.meta.url);

export const demoPictures: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => name.slice(0, -5));

export interface ScalePicture {
  readonly name: string;
  readonly image: RgbaImage;
  readonly truth: Pick<Truth, "widthPx" | "heightPx" | "scaleObject">;
}

export async function demoPicture(name: string): Promise<ScalePicture> {
  const truth = JSON.parse(readFileSync(new URL(`${name}.json`, folder), "utf8")) as Truth;
  const { data, info } = await sharp(readFileSync(new URL(`${name}.jpg`, folder)))
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const image = { width: info.width, height: info.height, data: new Uint8ClampedArray(data) };
  return { name, image, truth };
}

export interface StudiedScale {
  readonly name: string;
  /** What lies in the picture. */
  readonly object: string;
  /** All of it in the picture. */
  readonly whole: boolean;
  readonly seen: string;
  /** Between two far places of the object: error and stated expanded uncertainty as shares of the true distance. */
  readonly error: number | null;
  readonly stated: number | null;
  readonly seconds: number;
}

/** Looks for a scale and holds a true distance on the object against it; a disc is told its true diameter. */
export function studyScale({ name, image, truth }: ScalePicture): StudiedScale {
  const start = performance.now();
  const seen = seenScale(image);
  const seconds = (performance.now() - start) / 1000;
  const object = truth.scaleObject;
  const inside = ({ px: [x, y] }: { readonly px: readonly [number, number] }): boolean =>
    x > 0 && y > 0 && x < truth.widthPx && y < truth.heightPx;
  const common = {
    name,
    object: object?.kind ?? "none",
    whole: object?.keyPoints.every(inside) ?? true,
    seconds,
  };
  if (seen === null) return { ...common, seen: "none", error: null, stated: null };
  const { scale, rim } = scaleOfSeen(seen, 1);
  const whole: Scale | null =
    scale ?? (rim && { kind: "disc", rim: [...rim], diameterMm: object?.sizes.diameterMm ?? 20 });
  const held =
    object === null || whole === null ? null : heldAgainst(whole, { ...truth, scaleObject: object });
  return { ...common, seen: seen.kind, error: held?.error ?? null, stated: held?.stated ?? null };
}

/** The farthest two key places of the object that are in the picture, through the calibration. */
function heldAgainst(
  scale: Scale,
  {
    scaleObject,
    widthPx,
    heightPx,
  }: { readonly widthPx: number; readonly heightPx: number } & {
    readonly scaleObject: NonNullable<Truth["scaleObject"]>;
  },
): { readonly error: number; readonly stated: number } | null {
  const made = calibrate(scale, { ...defaultMeasureOptions, photo: { widthPx, heightPx } });
  if (!made.ok) return null;
  const places = scaleObject.keyPoints.filter(
    ({ px: [x, y] }) => x > 0 && y > 0 && x < widthPx && y < heightPx,
  );
  const far = (of: readonly [number, number]): Point => ({ x: of[0], y: of[1] });
  const pairs = places.flatMap((p, i) => places.slice(i + 1).map((q) => [p, q] as const));
  const [a, b] = pairs.reduce((best, one) =>
    distance(far(one[0].planeMm), far(one[1].planeMm)) > distance(far(best[0].planeMm), far(best[1].planeMm))
      ? one
      : best,
  );
  const trueMm = distance(far(a.planeMm), far(b.planeMm));
  const of = (map: Calibration["map"]): number =>
    distance(mapPoint(map, far(a.px)), mapPoint(map, far(b.px)));
  const { map, variations } = made.value;
  const u = Math.hypot(
    ...variations.map(({ plus, minus, odds }) =>
      odds === undefined ? (of(plus) - of(minus)) / 2 : Math.sqrt(odds * (1 - odds)) * (of(plus) - of(minus)),
    ),
  );
  return { error: of(map) / trueMm - 1, stated: (2 * u) / trueMm };
}
