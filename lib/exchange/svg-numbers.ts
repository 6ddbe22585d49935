const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g;

/** Numbers separated by white space, commas or nothing but a sign, as SVG 1.1 writes them; null for anything else. */
export function readNumbers(text: string): readonly number[] | null {
  if (/[^\s,]/.test(text.replace(NUMBER, " "))) return null;
  const numbers = (text.match(NUMBER) ?? []).map(Number);
  return numbers.every(Number.isFinite) ? numbers : null;
}

/** Exactly one number; null otherwise. */
export function readNumber(text: string | undefined): number | null {
  const numbers = readNumbers(text ?? "");
  return numbers?.length === 1 ? (numbers[0] ?? null) : null;
}
