/**
 * The tree over a log of RFC 9162, 2.1 (as of RFC 6962 before it): a root that stands for all entries, a short path that shows
 * that one entry is among them, and one that shows that a longer log begins with a shorter one. Hashes are lower-case
 * hexadecimal; a leaf is `leafHash` of an entry's bytes.
 */

/** SHA-256 of bytes, hexadecimal; brought by the caller, because every platform has its own. */
export type BytesSha256 = (bytes: Uint8Array) => string;

const bytesOf = (hex: string): Uint8Array =>
  Uint8Array.from(hex.match(/../g) ?? [], (two) => parseInt(two, 16));

function joined(first: number, ...parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(1 + parts.reduce((sum, { length }) => sum + length, 0));
  out[0] = first;
  let at = 1;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** Leaves and nodes begin otherwise, so that none can be passed off as the other (2.1.1). */
export const leafHash = (data: Uint8Array, sha256: BytesSha256): string => sha256(joined(0, data));

const nodeHash = (left: string, right: string, sha256: BytesSha256): string =>
  sha256(joined(1, bytesOf(left), bytesOf(right)));

/** The largest power of two that is smaller than `size`, 2 or more. */
function splitOf(size: number): number {
  let left = 1;
  while (2 * left < size) left *= 2;
  return left;
}

/** The root over these leaves (2.1.1); of none: SHA-256 of nothing. */
export function treeRoot(leaves: readonly string[], sha256: BytesSha256): string {
  const [only] = leaves;
  if (only === undefined) return sha256(new Uint8Array());
  if (leaves.length === 1) return only;
  const left = splitOf(leaves.length);
  return nodeHash(treeRoot(leaves.slice(0, left), sha256), treeRoot(leaves.slice(left), sha256), sha256);
}

/** What shows that the leaf at `index` (from 0) is among these leaves, from the leaf up (2.1.3.1). */
export function inclusionProof(
  leaves: readonly string[],
  index: number,
  sha256: BytesSha256,
): readonly string[] {
  if (leaves.length <= 1) return [];
  const left = splitOf(leaves.length);
  const [near, far] = [leaves.slice(0, left), leaves.slice(left)];
  return index < left
    ? [...inclusionProof(near, index, sha256), treeRoot(far, sha256)]
    : [...inclusionProof(far, index - left, sha256), treeRoot(near, sha256)];
}

const half = (value: number): number => Math.floor(value / 2);
const isOdd = (value: number): boolean => value % 2 === 1;

/** Where a path stands between the leaf and the root: the places of what is shown and of the last leaf, on this level. */
function* climbing(place: number, last: number, path: readonly string[]) {
  for (const sibling of path) {
    if (last === 0) return false;
    const isRight = isOdd(place) || place === last;
    yield { sibling, isRight };
    // A node at the right edge without a neighbour goes up as it is.
    while (isRight && !isOdd(place) && place !== 0) [place, last] = [half(place), half(last)];
    [place, last] = [half(place), half(last)];
  }
  return last === 0;
}

/** Whether a path leads from the leaf at `index` to the root of a log of `size` leaves (2.1.3.2). */
export function verifyInclusion(
  claim: { readonly leaf: string; readonly index: number; readonly size: number; readonly root: string },
  path: readonly string[],
  sha256: BytesSha256,
): boolean {
  const { leaf, index, size, root } = claim;
  if (index < 0 || index >= size) return false;
  const steps = climbing(index, size - 1, path);
  let reached = leaf;
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value === true && reached === root;
    const { sibling, isRight } = step.value;
    reached = isRight ? nodeHash(sibling, reached, sha256) : nodeHash(reached, sibling, sha256);
  }
}

/** What shows that these leaves begin with the first `first` of them (2.1.4.1); of none or of all: nothing is needed. */
export function consistencyProof(
  leaves: readonly string[],
  first: number,
  sha256: BytesSha256,
): readonly string[] {
  return first <= 0 || first >= leaves.length ? [] : growth(leaves, first, true, sha256);
}

/** `isWhole`: the part asked about is the whole shorter log, whose root is known to whoever verifies. */
function growth(
  leaves: readonly string[],
  first: number,
  isWhole: boolean,
  sha256: BytesSha256,
): readonly string[] {
  if (first === leaves.length) return isWhole ? [] : [treeRoot(leaves, sha256)];
  const left = splitOf(leaves.length);
  const [near, far] = [leaves.slice(0, left), leaves.slice(left)];
  return first <= left
    ? [...growth(near, first, isWhole, sha256), treeRoot(far, sha256)]
    : [...growth(far, first - left, false, sha256), treeRoot(near, sha256)];
}

export interface TreeHead {
  readonly size: number;
  readonly root: string;
}

/** Whether the longer log begins with the shorter one, by their roots and a path (2.1.4.2). */
export function verifyConsistency(
  first: TreeHead,
  second: TreeHead,
  path: readonly string[],
  sha256: BytesSha256,
): boolean {
  if (first.size < 1 || first.size > second.size) return false;
  if (first.size === second.size) return path.length === 0 && first.root === second.root;
  let [place, last] = [first.size - 1, second.size - 1];
  while (isOdd(place)) [place, last] = [half(place), half(last)];
  // A shorter log that is a full tree is a node of the longer one, and its root is where the path begins.
  const [start, ...rest] = place === 0 ? [first.root, ...path] : path;
  if (start === undefined) return false;
  let [shorter, longer] = [start, start];
  const steps = climbing(place, last, rest);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value === true && shorter === first.root && longer === second.root;
    const { sibling, isRight } = step.value;
    if (isRight) shorter = nodeHash(sibling, shorter, sha256);
    longer = isRight ? nodeHash(sibling, longer, sha256) : nodeHash(longer, sibling, sha256);
  }
}
