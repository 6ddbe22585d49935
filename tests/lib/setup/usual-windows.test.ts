import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { usualWindow } from "@/lib/setup/usual-windows";
import { emptyRunSetup } from "@/lib/setup";

const keys = (setup: object) => {
  const result = diagnose(DiagnoseInputSchema.parse({ setup, findings: [{ imperfection: "spatter" }] }));
  return result.ok
    ? [...new Set(result.value.causes.flatMap(({ why }) => why.map(({ key }) => key)))].filter((key) =>
        key.startsWith("reading:"),
      )
    : [];
};

describe("usualWindow", () => {
  it("gives nothing for an unknown process, and a rod's current by its core", () => {
    expect(usualWindow(emptyRunSetup)).toEqual({});
    // A rule from memory: 1 A for a thousandth of an inch, so about 125 A in a 1/8 in rod.
    const { amps } = usualWindow({ ...emptyRunSetup, process: "SMAW", electrodeDiameterMm: 3.175 });
    expect(amps!.low).toBeCloseTo(75, 9);
    expect(amps!.high).toBeCloseTo(162.5, 9);
  });

  it("speaks when the class is not known; a process without a usual stick-out stays silent", () => {
    expect(keys({ process: "GMAW", ctwdMm: 45 })).toContain("reading:ctwdMm");
    expect(keys({ process: "FCAW-S", ctwdMm: 45 })).not.toContain("reading:ctwdMm");
    const unusual = "reading:polarity-unusual-for-process:polarity";
    expect(keys({ process: "GMAW", polarity: "DCEN" })).toContain(unusual);
    expect(keys({ process: "SMAW", polarity: "DCEN" })).not.toContain(unusual);
  });
});
