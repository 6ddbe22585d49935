/** A line seen through a short wave of one length: its part in step and a quarter out of step, place by place. */
export interface Wave {
  readonly re: Float32Array;
  readonly im: Float32Array;
}

/** The wave's Gaussian window has a standard deviation of half a wavelength; three of them are taken. */
export const waveReach = (columns: number): number => Math.ceil(1.5 * columns);

/**
 * The line through a complex wavelet (Morlet's, Grossmann and Morlet 1984) of wavelength `columns`, of unit energy and without
 * answer to even light. Nought within `waveReach` of either end.
 */
export function wave(line: Float32Array, columns: number): Wave {
  const reach = waveReach(columns);
  const places = Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach);
  const window = places.map((x) => Math.exp(-2 * (x / columns) ** 2));
  const cosine = places.map((x, i) => window[i]! * Math.cos((2 * Math.PI * x) / columns));
  const level = sum(cosine) / sum(window);
  const even = Float32Array.from(cosine, (c, i) => c - level * window[i]!);
  const odd = Float32Array.from(places, (x, i) => window[i]! * Math.sin((2 * Math.PI * x) / columns));
  const size = Math.sqrt(even.reduce((s, c) => s + c * c, 0));
  const [re, im] = [new Float32Array(line.length), new Float32Array(line.length)];
  for (let x = reach; x < line.length - reach; x++) {
    let [a, b] = [0, 0];
    for (let i = 0, k = x - reach; i < even.length; i++, k++) {
      const v = line[k]!;
      a += v * even[i]!;
      b += v * odd[i]!;
    }
    re[x] = a / size;
    im[x] = b / size;
  }
  return { re, im };
}

const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);
