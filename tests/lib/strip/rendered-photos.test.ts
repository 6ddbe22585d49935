import { readdirSync, readFileSync } from "node:fs";
import sharp from "sharp";
import { expect, it } from "vitest";
import { distance } from "@/lib/geometry";
import { findStrip } from "@/lib/strip";

interface Sidecar {
  widthPx: number;
  heightPx: number;
  scaleObject: { kind: string; keyPoints: { name: string; px: [number, number] }[] } | null;
}

const folder = new URL("../../../demo-images/set/", import.meta.url);
const withStrip = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => ({ name, truth: JSON.parse(readFileSync(new URL(name, folder), "utf8")) as Sidecar }))
  .filter(({ truth }) => truth.scaleObject?.kind === "strip");

it("there are rendered photographs with a strip to try", () => {
  expect(withStrip.length).toBeGreaterThan(0);
});

/** Drawn by the project's own renderer, whose camera, light and JPEG know nothing of this room; truth from its sidecar. */
it.each(withStrip)(
  "finds every corner of the strip in $name to half a pixel, or refuses a cut one",
  async ({ name, truth }) => {
    const file = new URL(name.replace(".json", ".jpg"), folder);
    const { data, info } = await sharp(readFileSync(file))
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const found = findStrip({ width: info.width, height: info.height, data: new Uint8ClampedArray(data) });
    const whole = truth.scaleObject!.keyPoints.every(
      ({ px: [x, y] }) => x > 0 && y > 0 && x < truth.widthPx && y < truth.heightPx,
    );
    if (!whole) {
      expect(found.ok).toBe(false);
      return;
    }
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    for (const { px } of truth.scaleObject!.keyPoints) {
      const at = { x: px[0], y: px[1] };
      const nearest = Math.min(...found.value.corners.map((corner) => distance(corner, at)));
      expect(nearest).toBeLessThan(0.5);
    }
  },
);
