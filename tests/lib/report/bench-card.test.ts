import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent, type BeadContent } from "@/lib/assess";
import { emptyDrawing, newMark } from "@/lib/marks";
import { benchCard } from "@/lib/report";
import { emptyRunSetup } from "@/lib/setup";
import type { ImperfectionId } from "@/lib/trade";
import { inch, metric } from "@/lib/units";

const cardOf = (setup: Partial<BeadContent["setup"]>, seen: readonly ImperfectionId[], units = metric) => {
  const marks = seen.map((id, i) =>
    newMark(`m${i}`, id, { kind: "point", at: { x: 5, y: 5 }, radius: null }),
  );
  const content: BeadContent = {
    ...emptyBeadContent,
    setup: { ...emptyRunSetup, ...setup },
    photos: [{ id: "p", role: "face", drawing: { ...emptyDrawing, marks } }],
  };
  const photos = [{ id: "p", sha256: "0".repeat(64), widthPx: 100, heightPx: 100 }];
  const bead = { id: "b", number: 7, revision: 3, createdAt: "2026-11-25T08:00:00.000Z", content, photos };
  return benchCard(assessBead(bead), units);
};

const wire = {
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  polarity: "DCEP",
  joint: "tee",
  thicknessMm: 10,
} as const;

describe("the bench card", () => {
  it("shows the settings of the next bead, with the change in them and only it framed", () => {
    const card = cardOf({ ...wire, volts: 19 }, ["spatter"]);
    expect(card.steps).toEqual(["From DCEP to DCEN"]);
    const polarity = card.settings.find(({ label }) => label === "Polarity");
    expect(polarity?.isChanged).toBe(true);
    expect(polarity?.values.join()).toContain("DCEN");
    expect(card.settings.filter(({ isChanged }) => isChanged)).toHaveLength(1);
    expect(card.settings.find(({ label }) => label === "Voltage")).toEqual({
      label: "Voltage",
      values: ["19 V"],
      isChanged: false,
    });
  });

  it("sets what the step says, as it can be set", () => {
    const gun = { wireFeedMPerMin: 8, volts: 31, amps: 210, ctwdMm: 19, travelSpeedMmPerMin: 420 };
    const gas = {
      process: "FCAW-G",
      electrodeClass: "E71T-1C",
      electrodeDiameterMm: 1.2,
      gas: "CO2",
    } as const;
    const card = cardOf({ ...wire, ...gas, ...gun, position: "horizontal", thicknessMm: 8 }, ["undercut"]);
    const target = / to ([\d.]+ V)$/.exec(card.steps[0] ?? "")?.[1];
    expect(target).toBeDefined();
    expect(card.settings.find(({ label }) => label === "Voltage")).toEqual({
      label: "Voltage",
      values: [target],
      isChanged: true,
    });
  });

  it("gives lengths in the reader's units first and in the others after them", () => {
    const plate = (units: typeof metric) =>
      cardOf(wire, [], units).settings.find(({ label }) => label === "Plate")?.values;
    expect(plate(metric)).toHaveLength(2);
    expect(plate(metric)).toEqual([...(plate(inch) ?? [])].reverse());
    expect(plate(metric)?.[0]).toContain("10 mm");
  });

  it("keeps the travel speed that length and time gave, not the length and the time of the bead just run", () => {
    const card = cardOf({ ...wire, polarity: "DCEN", weldLengthMm: 150, arcTimeS: 30 }, []);
    const labels = card.settings.map(({ label }) => label);
    expect(labels).not.toContain("Weld length");
    expect(labels).not.toContain("Arc time");
    // 150 mm in half a minute.
    expect(card.settings.find(({ label }) => label === "Travel speed")?.values[0]).toMatch(/^300 mm\/min/);
  });

  it("does not say to run it again where an inspector comes first", () => {
    const card = cardOf({ ...wire, polarity: "DCEN" }, ["crater-crack"]);
    expect(card.inspectorFirst).toBe(true);
    expect(card.headline).not.toMatch(/run it as it was/);
    expect(cardOf({ ...wire, polarity: "DCEN" }, []).headline).toMatch(/run it as it was/);
  });
});
