/**
 * The inner loops of the sum: vectors over "which of the open signs are explained", bit by bit. Short strides are
 * written out, because there the loop would cost more than its work.
 */

/** With probability q the sign of this bit becomes explained. */
function push(vector: Float64Array, size: number, bit: number, q: number): void {
  const keep = 1 - q;
  const stride = 1 << bit;
  if (stride === 1) {
    for (let m = 0; m < size; m += 2) {
      const unexplained = vector[m]!;
      vector[m + 1] = vector[m + 1]! + q * unexplained;
      vector[m] = keep * unexplained;
    }
    return;
  }
  if (stride === 2) {
    for (let m = 0; m < size; m += 4) {
      const a = vector[m]!;
      const b = vector[m + 1]!;
      vector[m + 2] = vector[m + 2]! + q * a;
      vector[m + 3] = vector[m + 3]! + q * b;
      vector[m] = keep * a;
      vector[m + 1] = keep * b;
    }
    return;
  }
  for (let block = 0; block < size; block += 2 * stride) {
    for (let m = block, n = block + stride; m < block + stride; m++, n++) {
      const unexplained = vector[m]!;
      vector[n] = vector[n]! + q * unexplained;
      vector[m] = keep * unexplained;
    }
  }
}

/** The transpose of `push`. */
function pull(vector: Float64Array, size: number, bit: number, q: number): void {
  const keep = 1 - q;
  const stride = 1 << bit;
  if (stride === 1) {
    for (let m = 0; m < size; m += 2) vector[m] = keep * vector[m]! + q * vector[m + 1]!;
    return;
  }
  if (stride === 2) {
    for (let m = 0; m < size; m += 4) {
      vector[m] = keep * vector[m]! + q * vector[m + 2]!;
      vector[m + 1] = keep * vector[m + 1]! + q * vector[m + 3]!;
    }
    return;
  }
  for (let block = 0; block < size; block += 2 * stride) {
    for (let m = block, n = block + stride; m < block + stride; m++, n++) {
      vector[m] = keep * vector[m]! + q * vector[n]!;
    }
  }
}

/** A sign's bit and how strongly a state makes it. */
export interface Push {
  readonly bit: number;
  readonly q: number;
}

/** `to` = weight · from, with two pushes in the same pass over the vector; the first bit is the lower one. */
export function pushPair(
  from: Float64Array,
  weight: number,
  to: Float64Array,
  size: number,
  first: Push,
  second: Push,
): void {
  const low = 1 << first.bit;
  const high = 1 << second.bit;
  const p = first.q;
  const q = second.q;
  const keepP = 1 - p;
  const keepQ = weight * (1 - q);
  const moveQ = weight * q;
  for (let block = 0; block < size; block += 2 * high) {
    for (let start = block; start < block + high; start += 2 * low) {
      for (let m = start; m < start + low; m++) {
        const a = from[m]!;
        const c = from[m + high]!;
        const none = keepP * a;
        const one = from[m + low]! + p * a;
        const d = from[m + high + low]! + p * c;
        to[m] = keepQ * none;
        to[m + low] = keepQ * one;
        to[m + high] = weight * (keepP * c) + moveQ * none;
        to[m + high + low] = weight * d + moveQ * one;
      }
    }
  }
}

/** The transpose of `pushPair` without a weight. */
export function pullPair(
  from: Float64Array,
  to: Float64Array,
  size: number,
  first: Push,
  second: Push,
): void {
  const low = 1 << first.bit;
  const high = 1 << second.bit;
  const p = first.q;
  const q = second.q;
  const keepP = 1 - p;
  const keepQ = 1 - q;
  for (let block = 0; block < size; block += 2 * high) {
    for (let start = block; start < block + high; start += 2 * low) {
      for (let m = start; m < start + low; m++) {
        const b = from[m + low]!;
        const d = from[m + high + low]!;
        const c = keepP * from[m + high]! + p * d;
        to[m] = keepQ * (keepP * from[m]! + p * b) + q * c;
        to[m + low] = keepQ * b + q * d;
        to[m + high] = c;
        to[m + high + low] = d;
      }
    }
  }
}

/**
 * `to` = weight · from with all pushes, lowest bits first, two at a time. The first pass over the vector is the copy
 * too: a pass less for every state of every variable.
 */
export function pushAllFrom(
  from: Float64Array,
  weight: number,
  to: Float64Array,
  size: number,
  pushes: readonly Push[],
): void {
  let i = 0;
  if (pushes.length > 1) {
    pushPair(from, weight, to, size, pushes[0]!, pushes[1]!);
    i = 2;
  } else for (let m = 0; m < size; m++) to[m] = weight * from[m]!;
  for (; i + 1 < pushes.length; i += 2) pushPair(to, 1, to, size, pushes[i]!, pushes[i + 1]!);
  if (i < pushes.length) push(to, size, pushes[i]!.bit, pushes[i]!.q);
}

/** The transpose of `pushAllFrom` without a weight; `to` may be `from`. */
export function pullAllFrom(
  from: Float64Array,
  to: Float64Array,
  size: number,
  pushes: readonly Push[],
): void {
  let i = 0;
  if (pushes.length > 1) {
    pullPair(from, to, size, pushes[0]!, pushes[1]!);
    i = 2;
  } else if (from !== to) for (let m = 0; m < size; m++) to[m] = from[m]!;
  for (; i + 1 < pushes.length; i += 2) pullPair(to, to, size, pushes[i]!, pushes[i + 1]!);
  if (i < pushes.length) pull(to, size, pushes[i]!.bit, pushes[i]!.q);
}

/** Opens a new highest bit: twice the size, its upper half what q explains. */
export function double(vector: Float64Array, size: number, q: number): void {
  if (q === 0) {
    vector.fill(0, size, 2 * size);
    return;
  }
  const keep = 1 - q;
  for (let m = 0; m < size; m++) {
    vector[size + m] = q * vector[m]!;
    vector[m] = keep * vector[m]!;
  }
}

/** The transpose of `double`, down to `size`, from one vector into another or in place. */
export function halveFrom(from: Float64Array, to: Float64Array, size: number, q: number): void {
  if (q === 0) {
    if (from !== to) for (let m = 0; m < size; m++) to[m] = from[m]!;
    return;
  }
  const keep = 1 - q;
  for (let m = 0; m < size; m++) to[m] = keep * from[m]! + q * from[size + m]!;
}

/** The mask with a 0 put in at `bit`. */
export function spread(mask: number, bit: number): number {
  return ((mask >> bit) << (bit + 1)) | (mask & ((1 << bit) - 1));
}
