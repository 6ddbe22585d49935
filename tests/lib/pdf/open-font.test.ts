import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { unpackWoff } from "@/lib/pdf/open-font";

const folder = fileURLToPath(
  new URL("../../../node_modules/@fontsource/barlow-condensed/files", import.meta.url),
);
const files = readdirSync(folder).filter((name) => /-(600|700)-normal\.woff$/.test(name));

/** The sum of an OpenType table: big-endian words added up (OpenType specification, "Calculating Checksums"). */
function sumOf(bytes: Buffer): number {
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + bytes.readUInt32BE(at)) >>> 0;
  return sum;
}

it.each(files)("%s is laid open whole: every table has the sum its maker wrote", (name) => {
  const font = unpackWoff(readFileSync(path.join(folder, name)));
  const count = font.readUInt16BE(4);
  expect(count).toBeGreaterThan(8);
  for (let i = 0; i < count; i += 1) {
    const row = 12 + 16 * i;
    const [sum, at, length] = [4, 8, 12].map((step) => font.readUInt32BE(row + step)) as [
      number,
      number,
      number,
    ];
    const table = Buffer.from(font.subarray(at, at + Math.ceil(length / 4) * 4));
    const tag = font.toString("latin1", row, row + 4);
    // The head's own sum leaves out the field that brings the whole font's to a fixed number.
    if (tag === "head") table.writeUInt32BE(0, 8);
    expect(sumOf(table), tag).toBe(sum);
  }
});
