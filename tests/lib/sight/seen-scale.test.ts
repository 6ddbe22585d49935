import { describe, expect, it } from "vitest";
import { divisions } from "@/lib/sight/tick-pattern";
import { ID1 } from "@/lib/sight/card-quads";
import { MM_PER_INCH } from "@/lib/base";
import { inDepth } from "../../setup/in-depth";
import { PATIENT_MS } from "../../setup/patience";
import { demoPicture, demoPictures, studyScale } from "./rendered/study-scale";

const few = ["restart-cluster", "tee-porosity-soot", "hard-cracks", "tee-undercut"];
/** What is seen on some: a rule by its lines, a card, a disc, and a rule that leans away from the camera. */
const wanted: Readonly<Record<string, string>> = {
  "restart-cluster": "rule",
  "tee-porosity-soot": "card",
  "hard-cracks": "disc",
  "tee-undercut": "tilted-rule",
};

describe("a scale seen without a click", () => {
  it.each(inDepth(few, demoPictures))(
    "on %s is the thing that lies there and holds the truth in its interval, or is none",
    async (name) => {
      const studied = studyScale(await demoPicture(name));
      expect(["none", studied.object, `tilted-${studied.object}`]).toContain(studied.seen);
      if (wanted[name]) expect(studied.seen).toBe(wanted[name]);
      if (studied.error !== null) expect(Math.abs(studied.error)).toBeLessThan(studied.stated!);
    },
    PATIENT_MS,
  );

  it("rests on the sizes of ISO/IEC 7810 (ID-1, from memory) and of the international inch", () => {
    expect([ID1.longMm, ID1.shortMm]).toEqual([85.6, 53.98]);
    expect(divisions.find(({ id }) => id === "inch-16")?.pitchMm).toBeCloseTo(25.4 / 16, 12);
    expect(MM_PER_INCH).toBe(25.4);
  });
});
