import { describe, expect, it } from "vitest";
import { createCamera, undistort } from "@/demo-images/camera/camera";
import { createUndistorter } from "@/demo-images/camera/undistort";

describe("the table of undistortion", () => {
  it.each([-0.15, 0, 0.02, 0.15])(
    "gives what the iteration gives, to a thousandth of a pixel, at k1 = %d",
    (k1) => {
      const camera = createCamera({
        ...{ widthPx: 4000, heightPx: 3000, target: [0, 0, 0], distanceMm: 230, fieldWidthMm: 130 },
        ...{ tiltDeg: 10, azimuthDeg: 0, rollDeg: 0, k1, k2: -0.3 * k1 },
      });
      const read = createUndistorter(camera);
      const out = new Float64Array(2);
      for (let x = 0; x <= 4000; x += 125)
        for (let y = 0; y <= 3000; y += 125) {
          read(x, y, out);
          const [tx, ty] = undistort(camera, x, y);
          expect(Math.hypot(out[0]! - tx, out[1]! - ty) * camera.focalPx).toBeLessThan(1e-3);
        }
    },
  );
});
