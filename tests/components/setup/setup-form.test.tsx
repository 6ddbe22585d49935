import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { isAsked } from "@/components/setup/asked";
import { SetupForm } from "@/components/setup";
import {
  checkSetup,
  emptyRunSetup,
  exampleSetups,
  findingSentence,
  parseReading,
  partFields,
  RunSetupSchema,
  setupParts,
  showReading,
  type NumberField,
  type RunSetup,
  type SetupField,
} from "@/lib/setup";
import { numberFields } from "../../lib/setup/number-fields";
import { inch, metric } from "@/lib/units";

const fields = Object.keys(emptyRunSetup).filter((key) => key !== "schemaVersion") as SetupField[];

function html(setup: RunSetup, units = metric): string {
  return renderToStaticMarkup(
    <SetupForm setup={setup} onChange={() => {}} units={units} findings={checkSetup(setup)} />,
  );
}
const attribute = (markup: string, name: string) =>
  [...markup.matchAll(new RegExp(` ${name}="([^"]*)"`, "g"))].map((m) => m[1] ?? "");

/** Everything known at once, contradictions and all, so that every question is asked. */
const everything: RunSetup = RunSetupSchema.parse({
  ...exampleSetups.find(({ setup }) => setup.progression !== null)?.setup,
  process: "GMAW",
  transfer: "spray",
  gas: "CO2",
  gasFlowLPerMin: 16,
  amps: 150,
  travelSpeedMmPerMin: 200,
  weldLengthMm: 310,
  arcTimeS: 93,
  fitUpGapMm: 1,
  outdoors: true,
  passCount: 2,
  targetLegMm: 6,
  surface: "galvanised",
});

describe("the set-up form", () => {
  test("has a control for every field of a set-up, in exactly one part", () => {
    const controls = attribute(html(everything), "id");
    const inParts = setupParts.flatMap(partFields);
    for (const field of fields) {
      expect(
        controls.filter((id) => id.endsWith(`_-${field}`)),
        field,
      ).toHaveLength(1);
      expect(
        inParts.filter((name) => name === field),
        field,
      ).toHaveLength(1);
    }
  });

  test("shows a recorded value even where the question makes no sense", () => {
    for (const field of fields) expect(isAsked(field, everything), field).toBe(true);
    expect(isAsked("ctwdMm", { ...emptyRunSetup, process: "SMAW" })).toBe(false);
    expect(isAsked("ctwdMm", { ...emptyRunSetup, process: "SMAW", ctwdMm: 12 })).toBe(true);
    expect(isAsked("progression", emptyRunSetup)).toBe(false);
    expect(isAsked("progression", { ...emptyRunSetup, position: "vertical" })).toBe(true);
    expect(isAsked("transfer", { ...emptyRunSetup, process: "FCAW-S" })).toBe(false);
  });

  test("every described-by, label and id leads somewhere, once", () => {
    for (const markup of [html(emptyRunSetup), html(everything), html(everything, inch)]) {
      const ids = attribute(markup, "id");
      expect(new Set(ids).size).toBe(ids.length);
      const references = [...attribute(markup, "aria-describedby"), ...attribute(markup, "for")];
      expect(references.length).toBeGreaterThan(10);
      for (const id of references.flatMap((list) => list.split(" "))) expect(ids).toContain(id);
    }
  });

  test("unknown is the default everywhere: nothing is chosen or filled in", () => {
    const markup = html(emptyRunSetup);
    const checked = [...markup.matchAll(/<label[^>]*><input[^>]*checked=""[^>]*\/?><span>([^<]*)/g)].map(
      (m) => m[1],
    );
    expect(new Set(checked)).toEqual(new Set(["Don’t know"]));
    expect(
      attribute(markup, "value").filter(
        (value) => value !== "" && !markup.includes(`<option value="${value}"`),
      ),
    ).toEqual([]);
  });

  test("a finding stands in the summary and at its field", () => {
    const found = checkSetup(everything).find(({ code }) => code === "zinc-fume");
    if (!found) throw new Error("rule");
    const text = findingSentence(found, showReading(metric));
    expect(html(everything).split(text)).toHaveLength(3);
    expect(html(emptyRunSetup)).not.toContain(text);
  });
});

describe("what a number field takes", () => {
  const read = (name: NumberField, typed: string, units = metric) => {
    const answer = parseReading(name, typed, units);
    return answer.ok ? Number(answer.value.toFixed(4)) : (answer.issues[0]?.code ?? "");
  };

  test("whatever it takes, the stored shape takes too", () => {
    for (const name of numberFields) {
      for (const typed of ["0", "1", "80", "150", "900", "1600", "6000", "25000", "40000"]) {
        const answer = parseReading(name, typed, metric);
        if (!answer.ok) continue;
        const stored = RunSetupSchema.safeParse({ [name]: answer.value });
        expect(stored.success, `${name} ${typed}`).toBe(true);
      }
    }
  });

  test("the person's unit is meant by a bare number", () => {
    expect(read("wireFeedMPerMin", "280", inch)).toBe(7.112);
    expect(read("wireFeedMPerMin", "7.1")).toBe(7.1);
    expect(read("thicknessMm", "1/4", inch)).toBe(6.35);
    expect(read("electrodeDiameterMm", ".045", inch)).toBe(1.2);
    expect(read("arcTimeS", "1:33")).toBe(93);
    expect(read("gasFlowLPerMin", "0")).toBe(0);
    expect(read("passCount", "2")).toBe(2);
  });

  test("a slip is refused, not guessed", () => {
    expect(read("passCount", "1.5")).toBe("number-not-understood");
    expect(read("passCount", "0")).toBe("number-not-understood");
    expect(read("volts", "-18")).toBe("number-negative");
    expect(read("travelAngleDeg", "120")).toBe("number-too-large");
    expect(read("thicknessMm", "0")).toBe("number-zero");
  });
});
