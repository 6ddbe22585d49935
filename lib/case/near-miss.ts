/**
 * The known word that was most likely meant: the same but for case and signs, else one that begins like it, else one
 * at most two slips away (a letter wrong, missing, too many, or two changed about). null: none is near.
 */
export function nearMiss(word: string, known: readonly string[]): string | null {
  const bare = letters(word);
  if (bare === "" || bare.length > 60) return null;
  const same = known.find((name) => letters(name) === bare);
  if (same !== undefined) return same;
  const begins = known.find((name) => letters(name).startsWith(bare) || bare.startsWith(letters(name)));
  if (begins !== undefined && letters(begins) !== "") return begins;
  const [nearest] = known
    .map((name) => ({ name, slips: slipsBetween(bare, letters(name)) }))
    .filter(({ slips }) => slips <= Math.min(2, bare.length / 3))
    .toSorted((a, b) => a.slips - b.slips);
  return nearest?.name ?? null;
}

/** Whether only case, signs or a cut end tell the two apart, so that both surely mean the same unit. */
export function sameStem(word: string, name: string): boolean {
  return letters(name).startsWith(letters(word));
}

function letters(word: string): string {
  return word.toLowerCase().replace(/[^a-z0-9]/g, "");
}

/** Edit distance with neighbours changed about as one slip (optimal string alignment). */
function slipsBetween(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const differs = a[i - 1] === b[j - 1] ? 0 : 1;
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row[j] = Math.min(
        last[j]! + 1,
        row[j - 1]! + 1,
        last[j - 1]! + differs,
        swapped ? before[j - 2]! + 1 : Infinity,
      );
    }
    [before, last] = [last, row];
  }
  return last[b.length]!;
}
