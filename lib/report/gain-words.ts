/** From so many bits on an answer settles much, and some. Own choice: a half and a tenth of a yes-or-no settled for good. */
const MUCH = 0.5;
const SOME = 0.1;

/** What answering one thing would bring, in words: `bits` of all that is open, `most` where nothing would bring more. */
export function gainWords(bits: number, most: boolean): string {
  if (most) return "It would settle most.";
  if (bits >= MUCH) return "It would settle much.";
  return bits >= SOME ? "It would settle some." : "It would settle a little.";
}
