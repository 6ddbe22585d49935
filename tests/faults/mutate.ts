/** Files made hostile by changes at random, the same for the same seed. */

export type Chance = (below: number) => number;

export function chanceFrom(seed: number): Chance {
  // Stirred, so that seeds beside one another begin apart.
  let state = Math.imul(seed ^ (seed >>> 16), 0x85eb_ca6b) >>> 0;
  state = Math.imul(state ^ (state >>> 13), 0xc2b2_ae35) >>> 0;
  state = (state ^ (state >>> 16)) >>> 0 || 1;
  return (below) => {
    // xorshift32: good enough to choose places, and every byte of it can be repeated.
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state % below;
  };
}

const extremes = [0, 1, 0x7f, 0x80, 0xff, 0x7fff, 0x8000, 0xffff, 0x7fff_ffff, 0x8000_0000, 0xffff_ffff];

type Change = (bytes: Buffer, chance: Chance, others: readonly Buffer[]) => Buffer;

const changes: readonly Change[] = [
  // One to eight bits turned.
  (bytes, chance) => {
    for (let i = chance(8); i >= 0; i -= 1) bytes[chance(bytes.length)]! ^= 1 << chance(8);
    return bytes;
  },
  // A run of one value, where lengths and tables are: more often near the front.
  (bytes, chance) => {
    const at = chance(2) === 0 ? chance(Math.min(600, bytes.length)) : chance(bytes.length);
    return bytes.fill(extremes[chance(5)]!, at, Math.min(bytes.length, at + 1 + chance(64)));
  },
  // A number of two or four bytes made extreme, either end first.
  (bytes, chance) => {
    const at = chance(Math.max(1, Math.min(900, bytes.length) - 4));
    const value = extremes[chance(extremes.length)]!;
    if (chance(2) === 0) bytes.writeUInt32BE(value >>> 0, at);
    else bytes.writeUInt32LE(value >>> 0, at);
    return bytes;
  },
  // Cut off.
  (bytes, chance) => bytes.subarray(0, chance(bytes.length)),
  // A piece twice, or taken out.
  (bytes, chance) => {
    const [at, length] = [chance(bytes.length), 1 + chance(2000)];
    const piece = bytes.subarray(at, at + length);
    return chance(2) === 0
      ? Buffer.concat([bytes.subarray(0, at), piece, bytes.subarray(at)])
      : Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + length)]);
  },
  // The front of one file on the rest of another.
  (bytes, chance, others) => {
    const other = others[chance(others.length)]!;
    const at = chance(Math.min(bytes.length, other.length));
    return Buffer.concat([bytes.subarray(0, at), other.subarray(at)]);
  },
  // The first bytes of another kind of file.
  (bytes, chance) => {
    const fronts = [
      "GIF89a",
      "%PDF-1.7",
      "PK\u0003\u0004",
      "<svg xmlns=",
      "BM6",
      "MZ\u0090",
      "#!/bin/sh\n",
      "\u00ff\u00d8\u00ff\u00e0",
    ];
    bytes.write(fronts[chance(fronts.length)]!, "latin1");
    return bytes;
  },
  // Something behind its end.
  (bytes, chance) => Buffer.concat([bytes, Buffer.alloc(1 + chance(5000), chance(256))]),
];

/** One of the files with one to three changes. */
export function mutated(files: readonly Buffer[], chance: Chance): Buffer {
  let bytes = Buffer.from(files[chance(files.length)]!);
  for (let i = chance(3); i >= 0 && bytes.length > 8; i -= 1)
    bytes = Buffer.from(changes[chance(changes.length)]!(bytes, chance, files));
  return bytes;
}

const hostileValues: readonly unknown[] = [
  null,
  "",
  -1,
  1e308,
  9_007_199_254_740_991,
  "../../x",
  "__proto__",
  "a/b?c#d",
  "x".repeat(5000),
  [],
  {},
  [[[[]]]],
  true,
  "2026-13-45T99:99:99Z",
  "\u0000\ud800",
  { constructor: { prototype: {} } },
];

/** A plain JSON value with one to three of its values replaced, taken out, or doubled. */
export function mutatedJson(value: unknown, chance: Chance): void {
  for (let i = chance(3); i >= 0; i -= 1) {
    const places: [Record<string, unknown>, string][] = [];
    const walk = (at: unknown): void => {
      if (typeof at !== "object" || at === null) return;
      for (const key of Object.keys(at)) {
        places.push([at as Record<string, unknown>, key]);
        walk((at as Record<string, unknown>)[key]);
      }
    };
    walk(value);
    const [holder, key] = places[chance(places.length)]!;
    const act = chance(4);
    if (act === 0 && !Array.isArray(holder)) delete holder[key];
    else if (act === 1 && Array.isArray(holder)) holder.push(structuredClone(holder[0]));
    else if (act === 2)
      [holder[key]] = [places[chance(places.length)]![0]].map((one) => structuredClone(one));
    else holder[key] = structuredClone(hostileValues[chance(hostileValues.length)]);
  }
}
