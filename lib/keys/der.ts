/** DER, as far as a signature needs it (ITU-T X.690): a value is its tag, its length and its bytes. */
export function der(tag: number, ...parts: readonly Uint8Array[]): Buffer {
  const bytes = Buffer.concat(parts);
  return Buffer.concat([Buffer.from([tag]), lengthOf(bytes.length), bytes]);
}

function lengthOf(count: number): Buffer {
  if (count < 0x80) return Buffer.from([count]);
  const hex = count.toString(16);
  const bytes = Buffer.from(hex.length % 2 === 1 ? `0${hex}` : hex, "hex");
  return Buffer.concat([Buffer.from([0x80 | bytes.length]), bytes]);
}

export const sequence = (...parts: readonly Uint8Array[]): Buffer => der(0x30, ...parts);
export const octets = (bytes: Uint8Array): Buffer => der(0x04, bytes);
export const nothing = der(0x05);
/** 0 to 127. */
export const smallInteger = (value: number): Buffer => der(0x02, Buffer.from([value]));
/** A set stands in the order of its bytes (X.690, 11.6). */
export const setOf = (...parts: readonly Uint8Array[]): Buffer =>
  der(0x31, ...parts.toSorted((a, b) => Buffer.compare(a, b)));

/** An object identifier as written with dots. */
export function objectId(dotted: string): Buffer {
  const [first = 0, second = 0, ...rest] = dotted.split(".").map(Number);
  return der(0x06, Buffer.from([first * 40 + second, ...rest].flatMap(base128)));
}

function base128(value: number): number[] {
  const low = [value & 0x7f];
  for (let rest = Math.floor(value / 128); rest > 0; rest = Math.floor(rest / 128))
    low.unshift((rest & 0x7f) | 0x80);
  return low;
}

/** One value as it lies in bytes: `all` with tag and length, `inner` without. */
export interface DerValue {
  readonly tag: number;
  readonly all: Buffer;
  readonly inner: Buffer;
}

/** The values that lie one after another in these bytes. Throws where they are cut short. */
export function readDer(bytes: Uint8Array): readonly DerValue[] {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found: DerValue[] = [];
  for (let at = 0; at < buffer.length;) {
    const head = buffer.readUInt8(at + 1);
    const more = head < 0x80 ? 0 : head & 0x7f;
    const start = at + 2 + more;
    const end = start + (more === 0 ? head : buffer.readUIntBE(at + 2, more));
    if (end > buffer.length) throw new RangeError("a value is longer than what holds it");
    found.push({
      tag: buffer.readUInt8(at),
      all: buffer.subarray(at, end),
      inner: buffer.subarray(start, end),
    });
    at = end;
  }
  return found;
}
