/** Coefficients for g = 7, n = 9 of Lanczos' series (Lanczos 1964), as P. Godfrey computed them; from memory. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** Natural logarithm of Γ(x) for x > 0, relative error about 1e-15. NaN for x <= 0 or NaN. */
export function logGamma(x: number): number {
  if (!(x > 0)) return NaN;
  if (x === Infinity) return Infinity;
  // Reflection keeps the series where it is accurate.
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  const sum = LANCZOS.reduce((total, c, i) => (i === 0 ? c : total + c / (z + i)), 0);
  const t = z + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}
