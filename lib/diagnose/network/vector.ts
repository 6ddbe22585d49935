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

/** Two pushes in one pass over the vector; the first bit is the lower one. */
export function pushPair(vector: Float64Array, size: number, first: Push, second: Push): void {
  const low = 1 << first.bit;
  const high = 1 << second.bit;
  const p = first.q;
  const q = second.q;
  const keepP = 1 - p;
  const keepQ = 1 - q;
  for (let block = 0; block < size; block += 2 * high) {
    for (let from = block; from < block + high; from += 2 * low) {
      for (let m = from; m < from + low; m++) {
        const a = vector[m]!;
        const c = vector[m + high]!;
        const none = keepP * a;
        const one = vector[m + low]! + p * a;
        vector[m] = keepQ * none;
        vector[m + low] = keepQ * one;
        vector[m + high] = keepP * c + q * none;
        vector[m + high + low] = vector[m + high + low]! + p * c + q * one;
      }
    }
  }
}

/** The transpose of `pushPair`. */
export function pullPair(vector: Float64Array, size: number, first: Push, second: Push): void {
  const low = 1 << first.bit;
  const high = 1 << second.bit;
  const p = first.q;
  const q = second.q;
  const keepP = 1 - p;
  const keepQ = 1 - q;
  for (let block = 0; block < size; block += 2 * high) {
    for (let from = block; from < block + high; from += 2 * low) {
      for (let m = from; m < from + low; m++) {
        const b = vector[m + low]!;
        const c = keepP * vector[m + high]! + p * vector[m + high + low]!;
        vector[m] = keepQ * (keepP * vector[m]! + p * b) + q * c;
        vector[m + low] = keepQ * b + q * vector[m + high + low]!;
        vector[m + high] = c;
      }
    }
  }
}

/** All pushes, lowest bits first, two at a time. */
export function pushAll(vector: Float64Array, size: number, pushes: readonly Push[]): void {
  let i = 0;
  for (; i + 1 < pushes.length; i += 2) pushPair(vector, size, pushes[i]!, pushes[i + 1]!);
  if (i < pushes.length) push(vector, size, pushes[i]!.bit, pushes[i]!.q);
}

/** The transpose of `pushAll`. */
export function pullAll(vector: Float64Array, size: number, pushes: readonly Push[]): void {
  let i = 0;
  for (; i + 1 < pushes.length; i += 2) pullPair(vector, size, pushes[i]!, pushes[i + 1]!);
  if (i < pushes.length) pull(vector, size, pushes[i]!.bit, pushes[i]!.q);
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

/** The transpose of `double`, down to `size`. */
export function halve(vector: Float64Array, size: number, q: number): void {
  if (q === 0) return;
  const keep = 1 - q;
  for (let m = 0; m < size; m++) vector[m] = keep * vector[m]! + q * vector[size + m]!;
}

/** The mask with a 0 put in at `bit`. */
export function spread(mask: number, bit: number): number {
  return ((mask >> bit) << (bit + 1)) | (mask & ((1 << bit) - 1));
}
