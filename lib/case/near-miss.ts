/**
 * The known word that was most likely meant: the same but for case and signs, else the one that begins alike, else the
 * one at most two slips away (a letter wrong, missing, too many, or two changed about). null: none is near, or two are
 * equally near, because a wrong guess ("DC+" for DCEN) is worse than none.
 */
export function nearMiss(word: string, known: readonly string[]): string | null {
  const bare = letters(word);
  if (bare === "" || bare.length > 60) return null;
  const same = known.filter((name) => letters(name) === bare);
  if (same.length > 0) return onlyOne(same);
  const begins = known.filter((name) => beginAlike(bare, letters(name)));
  if (begins.length > 0) return onlyOne(begins);
  const slips = known.map((name) => slipsBetween(bare, letters(name)));
  const fewest = Math.min(...slips);
  if (fewest <= Math.min(2, bare.length / 3)) return onlyOne(known.filter((_, i) => slips[i] === fewest));
  const shared = known.map((name) => sharedStart(bare, letters(name)));
  const most = Math.max(0, ...shared);
  return most >= (bare.length * 2) / 3 ? onlyOne(known.filter((_, i) => shared[i] === most)) : null;
}

function onlyOne(names: readonly string[]): string | null {
  return names.length === 1 ? names[0]! : null;
}

/** One is the other with its end cut off; of one or two letters much begins. */
function beginAlike(a: string, b: string): boolean {
  return Math.min(a.length, b.length) >= 3 && (a.startsWith(b) || b.startsWith(a));
}

/** How many letters at the start are the same: "wireFeedIpm" and "wireFeedMPerMin" share eight. */
function sharedStart(a: string, b: string): number {
  const end = [...a].findIndex((letter, i) => letter !== b[i]);
  return end === -1 ? a.length : end;
}

/** Whether only case and signs tell the two apart, so that both surely mean the same unit. */
export function sameLetters(word: string, name: string): boolean {
  return letters(word) === letters(name);
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
