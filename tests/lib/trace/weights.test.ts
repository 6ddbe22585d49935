import { statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { finder, reader, type ReadStrip, type ReadWhole } from "@/lib/trace";
import { itDeep } from "../../setup/in-depth";
import { PATIENT_MS } from "../../setup/patience";
import { digestOf, finderFile, nodeFinder, nodeReader, weightsFile } from "./node-reader";
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
