import { describe, expect, it } from "vitest";
import { proposal } from "@/lib/assess";
import { diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { answerWords, changeText, generalCautions, reasonsOf } from "@/lib/report";
import { cautionLines } from "@/lib/report/caution-lines";
import { inch, metric } from "@/lib/units";
import cases from "@/tests/cases/diagnose/published.json";

const told = (given: object) => {
  const evidence = DiagnoseInputSchema.parse(given);
  const answer = diagnose(evidence);
  if (!answer.ok) throw new Error(answer.issues[0]?.code);
  return { evidence, diagnosis: answer.value };
};
const answerTo = (given: object, units = metric) => {
  const from = told(given);
  return answerWords(from, proposal(from.diagnosis)!.first, units);
};
const wire = { process: "FCAW-S", electrodeClass: "E71T-11", electrodeDiameterMm: 0.9 };
const run = {
  process: "FCAW-G",
  electrodeClass: "E71T-1C",
  electrodeDiameterMm: 1.2,
  gas: "CO2",
  joint: "tee",
  wireFeedMPerMin: 8,
  travelSpeedMmPerMin: 620,
  thicknessMm: 8,
};
const fast = { setup: run, findings: [{ imperfection: "undercut" }, { imperfection: "convex-bead" }] };

describe("the answer in words", () => {
  it("says what the record shows first, and what it did", () => {
    const { cause, sure, reasons, step } = answerTo({
      setup: { ...wire, polarity: "DCEP" },
      findings: [{ imperfection: "surface-porosity" }],
    });
    expect([cause, sure, step]).toEqual(["Wrong polarity", "the record shows it", "From DCEP to DCEN"]);
    expect(reasons[0]).toMatch(/recorded polarity/);
    expect(reasons[1]).toMatch(/^Surface porosity: /);
  });

  it("says what somebody found", () => {
    const { sure, reasons } = answerTo({
      setup: wire,
      findings: [{ imperfection: "undercut" }],
      answers: { "travel-pace": "fast" },
    });
    expect(sure).toBe("you found it");
    expect(reasons[0]).toMatch(/Faster than usual/);
  });

  it("expects the marks to go, and the leg that the models make of it beside what they made of this one", () => {
    const [then, was] = /leg about ([\d.]+) mm, was ([\d.]+) mm/
      .exec(answerTo(fast).expect)!
      .slice(1)
      .map(Number);
    // Mass balance: what is laid per length goes with feed over travel, and the leg with its root.
    const { diagnosis } = told(fast);
    const { fromSi, toSi } = proposal(diagnosis)!.first;
    expect(Math.abs(then! / was! - Math.sqrt(fromSi! / toSi!))).toBeLessThan(0.5 / was!);
    expect(answerTo(fast).expect).toMatch(/^ropey or convex bead and undercut less or gone; /);
    expect(answerTo(fast, inch).expect).toMatch(/leg about [\d/]+ in, was [\d/]+ in/);
  });

  it("takes a measured leg for what it was where the model had none", () => {
    const { travelSpeedMmPerMin: _, ...unknown } = run;
    const bead = { legMm: 4.5, widthMm: null, lengthMm: null };
    expect(answerTo({ ...fast, setup: unknown, bead }).expect).toMatch(/leg about [\d.]+ mm, was 4\.5 mm/);
  });

  it("never prints a percentage of likelihood, nor what it rests on", () => {
    for (const { given } of cases) {
      const from = told(given);
      const first = proposal(from.diagnosis)?.first;
      if (!first) continue;
      const { reasons, ...words } = answerWords(from, first, metric);
      expect(reasons.length).toBeGreaterThan(0);
      expect(reasons.length).toBeLessThanOrEqual(2);
      expect(Object.values(words).join(" ")).not.toMatch(/%/);
      expect([...reasons, ...Object.values(words)].join(" ")).not.toMatch(/check your copy|in the source/i);
    }
  });
});

it("gives at most three reasons for and two against, the strongest first, and folds the rest", () => {
  let folded = 0;
  for (const { given } of cases)
    for (const { why } of told(given).diagnosis.causes.slice(0, 3)) {
      const { speaksFor, speaksAgainst, restFor, restAgainst } = reasonsOf(why, metric);
      expect(speaksFor.length).toBeLessThanOrEqual(3);
      expect(speaksAgainst.length).toBeLessThanOrEqual(2);
      const strongest = why.find(({ direction }) => direction === "for");
      if (strongest) expect(speaksFor[0]).toContain(strongest.sentence.replace(/\.$/, ""));
      const all = [...speaksFor, ...restFor];
      expect(new Set(all).size).toBe(all.length);
      folded += restFor.length + restAgainst.length;
    }
  expect(folded).toBeGreaterThan(0);
});

describe("how far to go", () => {
  const changeOf = (setup: object, id: string, units = metric) =>
    changeText(told({ setup }).diagnosis.causes.find((cause) => cause.id === id)!.change, units);

  it("is said where nobody wrote down from where", () => {
    expect(changeOf(wire, "travel-fast")).toBe("Travel speed down by about a fifth");
    expect(changeOf(wire, "wfs-high")).toBe("Wire feed down by about a tenth");
    expect(changeOf(wire, "volt-low")).toMatch(/^Voltage up by 1 V$/);
    expect(changeOf(wire, "contam")).toMatch(/25 mm/);
  });

  it("leaks no millimetres into inches", () => {
    for (const { id, change } of told({ setup: wire }).diagnosis.causes)
      expect(changeText(change, inch), id).not.toMatch(/\bmm\b|°C|L\/min/);
  });
});

describe("the cautions of one bead", () => {
  it("always hold shock and what holds of every bead, each once", () => {
    for (const { given } of cases) {
      const lines = cautionLines(told(given).diagnosis);
      expect(lines.join(" ")).toMatch(/Electric shock/);
      expect(lines).toEqual(expect.arrayContaining([...generalCautions]));
      expect(new Set(lines).size).toBe(lines.length);
    }
    expect(cautionLines(null).join(" ")).toMatch(/Electric shock/);
  });

  it.each([
    [
      "zinc",
      { setup: { ...wire, surface: "galvanised" }, findings: [{ imperfection: "surface-porosity" }] },
      /Zinc/,
    ],
    ["chromium", { setup: { ...wire, baseMetal: "stainless" } }, /hexavalent/],
    ["wet", { setup: { ...wire, surface: "wet" } }, /In the wet/],
    [
      "solvent",
      {
        setup: { process: "GMAW", surface: "oil-or-paint" },
        findings: [{ imperfection: "surface-porosity" }],
      },
      /solvent/,
    ],
  ])("tell of %s where it is", (_name, given, words) => {
    expect(cautionLines(told(given).diagnosis).join(" ")).toMatch(words);
    expect(cautionLines(told({ setup: wire }).diagnosis).join(" ")).not.toMatch(words);
  });
});

it("names both ends of a length in inches as a shop reads them", () => {
  // 11 mm is 7/16 in to the nearest sixty-fourth.
  const { diagnosis } = told({ setup: { ...wire, ctwdMm: 11 } });
  const change = diagnosis.causes.find(({ id }) => id === "ctwd-short")!.change;
  expect(changeText(change, inch)).toMatch(/from 7\/16 in up to [\d/]+ in$/);
});
