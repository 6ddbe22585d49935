import { beforeAll, describe, expect, it } from "vitest";
import { distance } from "@/lib/geometry";
import { calibrate, defaultMeasureOptions, mapPoint } from "@/lib/measure";
import { findStrip, stripSentence, type FoundStrip, type RgbaImage } from "@/lib/strip";
import { inDepth } from "../../setup/in-depth";
import { bent, photographStrip, type StripPhoto } from "./rendered-strip";

const view = {
  scenario: "gas-marks-wormholes",
  megapixels: 0.9,
  quality: "photo",
  azimuthDeg: 30,
  rollDeg: 4,
  distanceMm: 170,
  fieldWidthMm: 235,
  distortion: 0.004,
} as const;

/** A bow over the whole length, highest in the middle, as of paper that has been rolled. */
const bow = (mm: number) => (xMm: number) => mm * Math.sin((Math.PI * Math.min(120, Math.max(0, xMm))) / 120);

const answer = (image: RgbaImage): string => {
  const found = findStrip(image);
  return found.ok ? "found" : found.issues[0]!.code;
};

/** By how much a length of 20 mm beside the weld is misread, picks aside. */
function misread(photo: StripPhoto, { corners, cornerSigmaPx }: FoundStrip): number {
  const calibration = calibrate(
    { kind: "strip", corners: [...corners], cornerSigmaPx, printFactor: 1 },
    defaultMeasureOptions,
  );
  if (!calibration.ok) throw new Error(calibration.issues[0]!.code);
  const [a, b] = [photo.shoot(50, -10), photo.shoot(62, -26)];
  return distance(mapPoint(calibration.value.map, a!), mapPoint(calibration.value.map, b!)) / 20 - 1;
}

/** The renderer's own pixels, with its lens, noise and sharpening; what is wrong with the strip is done to those. */
describe("the strip in rendered photographs", () => {
  const photos = new Map<number, StripPhoto>();
  const tilts = inDepth([25], [0, 25]);
  beforeAll(() => {
    for (const tiltDeg of tilts) photos.set(tiltDeg, photographStrip({ ...view, tiltDeg }));
  });

  it.each(tilts)("lies flat, tilt %s degrees: found, and good to a quarter per cent", (tiltDeg) => {
    const photo = photos.get(tiltDeg)!;
    const found = findStrip(photo.image);
    if (!found.ok) throw new Error(found.issues[0]!.code);
    for (const corner of found.value.corners)
      expect(distance(corner, photo.shoot(corner.xMm, corner.yMm))).toBeLessThan(0.25);
    expect(Math.abs(misread(photo, found.value))).toBeLessThan(0.0025);
  });

  it.each(tilts)(
    "bowed, tilt %s degrees: refused, or the bow does less than 2.5 per cent of harm",
    (tiltDeg) => {
      const photo = photos.get(tiltDeg)!;
      const answers = [1, 2, 3, 6].map((mm) => {
        const found = findStrip(bent(photo, bow(mm)));
        if (!found.ok) return found.issues[0]!.code;
        expect(Math.abs(misread(photo, found.value))).toBeLessThan(0.025);
        return "found";
      });
      expect(answers.slice(2)).toEqual(["strip-bent", "strip-bent"]);
    },
  );

  it("lifted at one end: refused as bent", () => {
    const lifted = (xMm: number): number => 0.004 * Math.max(0, xMm - 60) ** 2;
    expect(answer(bent(photos.get(25)!, lifted))).toBe("strip-bent");
  });

  it("cut by the picture's edge, or with something lying on one end: refused as cut", () => {
    const photo = photos.get(tilts[0]!)!;
    const edge = Math.round(photo.shoot(112, 11).x);
    expect(answer(cropped(photo.image, edge))).toBe("strip-cut");
    expect(answer(covered(photo, 104, 116))).toBe("strip-cut");
  });

  it("too far off: refused as too small, long before it would measure badly", () => {
    const far = photographStrip({ ...view, tiltDeg: 10, megapixels: 0.18 });
    expect(answer(far.image)).toBe("strip-too-small");
  });

  it("each refusal is one sentence that says what to do", () => {
    const sentences = (["strip-not-found", "strip-cut", "strip-too-small", "strip-bent"] as const).map(
      (code) => stripSentence({ code, path: [], data: {} }),
    );
    expect(new Set(sentences).size).toBe(4);
    for (const sentence of sentences) {
      expect(sentence).toMatch(/^[A-Z].*\.$/);
      expect(sentence).toMatch(/Lay it flat|Take the photo again|Move closer/);
    }
  });
});

function cropped({ width, height, data }: RgbaImage, to: number): RgbaImage {
  const out = new Uint8ClampedArray(4 * to * height);
  for (let row = 0; row < height; row++)
    out.set(data.subarray(4 * row * width, 4 * (row * width + to)), 4 * row * to);
  return { width: to, height, data: out };
}

/** A grey thing over the strip from one place along it to another. */
function covered({ image, shoot }: StripPhoto, fromMm: number, toMm: number): RgbaImage {
  const data = new Uint8ClampedArray(image.data);
  const [a, b] = [shoot(fromMm, 0), shoot(toMm, 22)];
  for (let row = Math.floor(Math.min(a.y, b.y)); row < Math.max(a.y, b.y); row++)
    for (let column = Math.floor(Math.min(a.x, b.x)); column < Math.max(a.x, b.x); column++)
      data.set([120, 118, 115], 4 * (row * image.width + column));
  return { ...image, data };
}
