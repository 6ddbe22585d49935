import { readFileSync, statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import sharp from "sharp";
import { spotsOf } from "@/demo-images/street/spots-of";
import type { Truth } from "@/demo-images";
import { findSpots, finder, reader, spots, type ReadStrip, type ReadTile, type ReadWhole } from "@/lib/trace";
import { besideBead } from "@/lib/trace/spot-zone";
import type { ToePoint, TraceStation } from "@/lib/trace/types";
import { itDeep } from "../../setup/in-depth";
import { PATIENT_MS } from "../../setup/patience";
import {
  digestOf,
  finderFile,
  nodeFinder,
  nodeReader,
  nodeSpots,
  spotsFile,
  weightsFile,
} from "./node-reader";
import { matchSpots, type Round } from "./rendered/spot-match";
import { tracePicture } from "./rendered/pictures";
import { studyPicture, type StudiedPicture } from "./rendered/study-picture";

/** Median error of both toes, in widths of the bead; infinite where the bead was refused. */
function medianError(studied: StudiedPicture | null): number {
  const errors = studied!.stations
    .flatMap(([upper, lower]) => [Math.abs(upper), Math.abs(lower)])
    .sort((a, b) => a - b);
  return errors[errors.length >> 1] ?? Infinity;
}

/** The farther end of a proposed line from the true one, in lengths of the bead; infinite where none is proposed. */
function endsOff(studied: StudiedPicture | null): number {
  const { proposal } = studied!;
  return typeof proposal === "string" || !proposal.made ? Infinity : Math.max(...proposal.ends);
}

describe("the reader's weights", () => {
  it("are those of this version, and small enough to be sent to a phone", () => {
    expect(digestOf(weightsFile)).toBe(reader.sha256);
    expect(digestOf(finderFile)).toBe(finder.sha256);
    expect(digestOf(spotsFile)).toBe(spots.sha256);
    expect(statSync(spotsFile).size).toBeLessThan(600_000);
    expect(statSync(weightsFile).size).toBeLessThan(2_000_000);
    expect(statSync(finderFile).size).toBeLessThan(1_400_000);
  });

  // The ordinary run takes the weights that were studied for read by their digest.
  itDeep(
    "read a joint they were never trained on within three hundredths of its width; with noughts for weights they do not",
    async () => {
      const read = await nodeReader();
      const picture = tracePicture("kept-plain", 3);
      const study = (reader: ReadStrip, finder?: ReadWhole) =>
        studyPicture("kept-plain", 3, reader, finder, picture);
      const shipped = await study(read, await nodeFinder());
      expect(medianError(shipped)).toBeLessThan(0.03);
      expect(endsOff(shipped)).toBeLessThan(0.1);
      // A finder of noughts proposes nothing.
      const blind = await study(read, await nodeFinder(withNoughts));
      expect(endsOff(blind)).toBe(Infinity);
      // Every weight is a half: zeroed bytes inside the large tensors leave the graph as it is.
      const zeroed = await nodeReader((bytes) => withNoughts(bytes));
      expect(medianError(await study(zeroed))).toBeGreaterThan(0.03);
    },
    4 * PATIENT_MS,
  );
});

/** The demo set's picture of a joint that was never trained on, its true toes as stations and what is in it. */
async function poresOfTheSet() {
  const file = new URL("../../../demo-images/set/corner-linear-pores", import.meta.url).pathname;
  const truth = JSON.parse(readFileSync(`${file}.json`, "utf8")) as Truth;
  const { data, info } = await sharp(`${file}.jpg`).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const { leftToePx, rightToePx } = truth.weld;
  const toe = ([x, y]: readonly [number, number]): ToePoint => ({
    at: { x, y },
    sigmaPx: 1,
    sure: 1,
    spread: 0.01,
  });
  const stations = leftToePx.map((left, i): TraceStation => {
    const right = rightToePx[i]!;
    const widthPx = Math.hypot(left[0] - right[0], left[1] - right[1]);
    return { alongPx: i, upper: toe(left), lower: toe(right), widthPx, end: false };
  });
  // A part of the bead is enough, and a fourth of the work.
  const part = stations.slice(8, 26);
  return { image: { width: info.width, height: info.height, data }, stations: part, truth };
}

it("the finder of holes finds the pores of a joint it was never trained on; with noughts for weights it does not", async () => {
  const { image, stations, truth } = await poresOfTheSet();
  const beside = besideBead(stations, 87);
  const holes = spotsOf(truth)
    .filter(({ kind, radiusPx }) => kind === "hole" && 2 * radiusPx >= spots.leastAcrossPx)
    .filter((hole) => beside(hole).across < 0.5 && beside(hole).past === 0)
    .map(({ kind, x, y, radiusPx }): Round => ({ kind, x, y, radius: radiusPx }));
  expect(holes.length).toBeGreaterThan(3);
  const right = async (readTile: ReadTile) => {
    const found = await findSpots(image, stations, readTile, spots);
    const said = found.map(({ kind, at, radiusPx }): Round => ({ kind, ...at, radius: radiusPx }));
    const hits = matchSpots(holes, said);
    const suggested = said.filter(({ kind }) => kind === "hole").length;
    return { found: hits.filter((i) => i >= 0).length / holes.length, suggested };
  };
  const shipped = await right(await nodeSpots());
  expect(shipped.found).toBeGreaterThanOrEqual(0.6);
  expect(shipped.suggested).toBeLessThanOrEqual(1.3 * holes.length + 1);
  expect((await right(await nodeSpots(withNoughts))).found).toBe(0);
});

/** The file with all long runs of raw tensor data set to nought; names, shapes and nodes stay. */
function withNoughts(bytes: Uint8Array): Uint8Array {
  const out = bytes.slice();
  const view = new TextDecoder("latin1").decode(out);
  // A tensor's raw data follows its name as field 9: 0x4a and a length of one or more seven-bit groups.
  for (let at = view.indexOf("_half\x4a"); at >= 0; at = view.indexOf("_half\x4a", at + 1)) {
    let [size, shift, from] = [0, 0, at + 6];
    for (;;) {
      const byte = out[from++]!;
      size |= (byte & 127) << shift;
      shift += 7;
      if (byte < 128) break;
    }
    out.fill(0, from, from + size);
  }
  return out;
}
