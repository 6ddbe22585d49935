import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  consistencyProof,
  inclusionProof,
  leafHash,
  treeRoot,
  verifyConsistency,
  verifyInclusion,
} from "@/lib/ledger/tree";
import { inDepth } from "../../setup/in-depth";

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const leaf = (hex: string): string => leafHash(Buffer.from(hex, "hex"), sha256);

// The eight leaves and their roots that the implementations of RFC 6962 test themselves by (transparency-dev/merkle,
// testonly/constants.go, read in a public copy), with two of its inclusion paths and one consistency path.
const leaves = [
  "",
  "00",
  "10",
  "2021",
  "3031",
  "40414243",
  "5051525354555657",
  "606162636465666768696a6b6c6d6e6f",
].map(leaf);
const roots = [
  "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
  "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
  "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
  "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
  "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
  "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
  "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
  "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
  "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328",
];

describe("the tree over a log", () => {
  it("has the roots and paths that others publish", () => {
    for (let size = 0; size <= leaves.length; size += 1)
      expect(treeRoot(leaves.slice(0, size), sha256), `${size} leaves`).toBe(roots[size]);
    expect(inclusionProof(leaves, 0, sha256)).toEqual([
      "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
      "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
      "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4",
    ]);
    expect(inclusionProof(leaves, 5, sha256)).toEqual([
      "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
      "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
      "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    ]);
    expect(consistencyProof(leaves, 2, sha256)).toEqual([
      "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
      "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4",
    ]);
  });

  const most = inDepth(24, 70);
  const many = Array.from({ length: most }, (_, i) => leaf(i.toString(16).padStart(4, "0")));
  const rootOf = (size: number) => treeRoot(many.slice(0, size), sha256);
  const spoilt = (hash: string) => `${hash.startsWith("0") ? "1" : "0"}${hash.slice(1)}`;

  it("shows each leaf of a log of each length in its place, and nothing else there", () => {
    const asked = fc
      .integer({ min: 1, max: most })
      .chain((size) => fc.tuple(fc.constant(size), fc.nat({ max: size - 1 }), fc.nat({ max: size - 1 })));
    fc.assert(
      fc.property(asked, fc.nat(), ([size, index, other], which) => {
        const path = inclusionProof(many.slice(0, size), index, sha256);
        const claim = { leaf: many[index]!, index, size, root: rootOf(size) };
        const holds = (change: Partial<typeof claim>, by = path) =>
          verifyInclusion({ ...claim, ...change }, by, sha256);
        expect(holds({})).toBe(true);
        if (other !== index) expect(holds({ index: other })).toBe(false);
        if (other !== index) expect(holds({ leaf: many[other]! })).toBe(false);
        expect(holds({ root: spoilt(claim.root) })).toBe(false);
        expect(holds({ index: size })).toBe(false);
        expect(holds({}, [...path, claim.root])).toBe(false);
        if (path.length > 0) expect(holds({}, path.slice(0, -1))).toBe(false);
        const at = which % Math.max(1, path.length);
        if (path.length > 0) expect(holds({}, path.with(at, spoilt(path[at]!)))).toBe(false);
      }),
      { seed: 20261127, numRuns: inDepth(60, 600) },
    );
  });

  it("shows that a log begins with each shorter one, and with no other", () => {
    const asked = fc
      .integer({ min: 1, max: most })
      .chain((size) =>
        fc.tuple(fc.constant(size), fc.integer({ min: 1, max: size }), fc.nat({ max: size - 1 })),
      );
    fc.assert(
      fc.property(asked, ([size, first, rewritten]) => {
        const path = consistencyProof(many.slice(0, size), first, sha256);
        const [shorter, longer] = [
          { size: first, root: rootOf(first) },
          { size, root: rootOf(size) },
        ];
        const holds = (a = shorter, b = longer, by = path) => verifyConsistency(a, b, by, sha256);
        expect(holds()).toBe(true);
        expect(holds({ ...shorter, root: spoilt(shorter.root) })).toBe(false);
        expect(holds(shorter, { ...longer, root: spoilt(longer.root) })).toBe(false);
        expect(holds({ ...shorter, size: size + 1 })).toBe(false);
        if (first > 1 && first < size) expect(holds({ ...shorter, size: first - 1 })).toBe(false);
        expect(holds(shorter, longer, [...path, longer.root])).toBe(false);
        for (const at of path.keys())
          expect(holds(shorter, longer, path.with(at, spoilt(path[at]!)))).toBe(false);
        // A log that was written anew within what was known does not begin with it, whatever path it gives.
        if (rewritten >= first) return;
        const anew = many.slice(0, size).with(rewritten, leaf("ff"));
        const other = { size, root: treeRoot(anew, sha256) };
        expect(holds(shorter, other, consistencyProof(anew, first, sha256))).toBe(false);
      }),
      { seed: 20261127, numRuns: inDepth(60, 600) },
    );
  });
});
