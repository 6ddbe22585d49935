/** Between the geometric and the plain mean of the light over the middle of the picture: what the phone's meter sees. */
function meanLight(rgb: Float32Array, width: number, height: number): number {
  let sum = 0;
  let bright = 0;
  let count = 0;
  for (let y = Math.floor(height * 0.12); y < height * 0.88; y += 5) {
    for (let x = Math.floor(width * 0.12); x < width * 0.88; x += 5) {
      const k = 3 * (y * width + x);
      const light = 0.25 * rgb[k]! + 0.62 * rgb[k + 1]! + 0.13 * rgb[k + 2]!;
      sum += Math.log(0.004 + light);
      bright += Math.min(1, light);
      count++;
    }
  }
  return 0.35 * Math.exp(sum / count) + 0.65 * (bright / count) * 0.82;
}

/** Factor from light to exposure that a phone's meter would choose, shifted by `exposureEv` stops. */
export const meterGain = (rgb: Float32Array, width: number, height: number, exposureEv: number): number =>
  (0.155 / meanLight(rgb, width, height)) * 2 ** exposureEv;
