import { describe, expect, it } from "vitest";
import { documents, imperfectionIds } from "@/lib/trade";
import { causeIds } from "@/lib/diagnose";
import { causeModel } from "@/lib/diagnose/model";
import { causes } from "@/lib/diagnose/tables/causes";
import { causeLinks } from "@/lib/diagnose/tables/links";
import { contraries, looks } from "@/lib/diagnose/tables/looks";
import { questions } from "@/lib/diagnose/tables/questions";
import { withoutCause } from "@/lib/diagnose/tables/without-cause";
import { symptoms } from "@/lib/diagnose/tables/symptoms";
import { exclusiveCauses } from "@/lib/diagnose/tables/variables";
import { documentsOf, namesFirst, sourcesOf } from "@/lib/diagnose/witness";
import { linkNotes } from "./link-notes";

const doubles = (list: readonly string[]) => list.filter((id, i) => list.indexOf(id) !== i);
const known = new Set<string>(causeIds);

describe("cause tables", () => {
  it("have one row for every cause id, with a name and a sentence", () => {
    expect(causes.map(({ id }) => id).toSorted()).toEqual([...causeIds].toSorted());
    expect(
      causes.filter(
        ({ name, sentence, correction, processes }) =>
          !name || !sentence.endsWith(".") || !correction.endsWith(".") || processes.length === 0,
      ),
    ).toEqual([]);
    expect(doubles(causes.map(({ name }) => name))).toEqual([]);
  });

  it("link every imperfection to causes or to a sentence why it has none, and every cause to something", () => {
    const linkedMarks = new Set(causeLinks.map(({ imperfection }) => imperfection));
    const both = imperfectionIds.map((id) => [id, linkedMarks.has(id) !== id in withoutCause]);
    expect(both).toEqual(imperfectionIds.map((id) => [id, true]));
    const linked = new Set<string>([
      ...causeLinks.map(({ cause }) => cause),
      ...symptoms.flatMap(({ links }) => links.map(({ cause }) => cause)),
    ]);
    expect(causeIds.filter((id) => !linked.has(id))).toEqual([]);
    expect(
      doubles(causeLinks.flatMap((l) => l.processes.map((p) => `${l.imperfection} ${l.cause} ${p}`))),
    ).toEqual([]);
  });

  it("resolve: every link names a known cause that occurs in its processes, and known documents", () => {
    const broken = causeLinks.filter(({ cause, processes, witnesses, because }) => {
      const row = causes.find(({ id }) => id === cause);
      return (
        !row ||
        !because.endsWith(".") ||
        processes.some((p) => p === undefined || !row.processes.includes(p)) ||
        documentsOf(witnesses).some((id) => !(id in documents))
      );
    });
    expect(broken.map(({ imperfection, cause }) => `${imperfection} ${cause}`)).toEqual([]);
  });

  it("have a source and a confidence on every row", () => {
    const rows = [
      ...causeLinks.map(({ witnesses }) => sourcesOf(witnesses)),
      ...looks.map(({ witnesses }) => sourcesOf(witnesses)),
      ...symptoms.map(({ witnesses }) => sourcesOf(witnesses)),
    ];
    expect(
      rows.filter(
        (sources) =>
          sources.length === 0 || sources.some(({ document, confidence }) => !document || !confidence),
      ),
    ).toEqual([]);
  });

  it("keep to the weight rule: a row that is not judged and strong has three documents, one of them leading", () => {
    const weak = causeLinks.filter(
      ({ weight, judged, witnesses }) =>
        weight === "strong" && !judged && (!witnesses.some(namesFirst) || documentsOf(witnesses).length < 3),
    );
    expect(weak.map(({ imperfection, cause }) => `${imperfection} ${cause}`)).toEqual([]);
  });

  it("rows that rest on memory alone: never strong unless judged, and counted", () => {
    const memory = causeLinks.filter(({ witnesses }) => documentsOf(witnesses).length === 0);
    expect(memory.every(({ witnesses }) => witnesses.includes("memory"))).toBe(true);
    expect(memory.filter(({ weight, judged }) => weight !== "weak" && !judged)).toEqual([]);
    expect(memory.map(({ imperfection, cause }) => `${imperfection} ${cause}`)).toMatchSnapshot();
  });

  it("notes on split, re-weighted and left-out rows speak of rows that are, or are not, there", () => {
    for (const { imperfection, causes: about, kind, reason } of linkNotes) {
      for (const cause of about) {
        const there = causeLinks.some((link) => link.imperfection === imperfection && link.cause === cause);
        expect(there, `${imperfection} ${cause}`).toBe(kind !== "left out");
      }
      expect(reason.endsWith(".")).toBe(true);
    }
  });

  it("looks favour only causes that can make the mark, and resolve", () => {
    const idle = looks.flatMap((look) =>
      look.favours
        .filter(
          (cause) =>
            !causeLinks.some(
              (link) => link.cause === cause && look.imperfections.includes(link.imperfection),
            ),
        )
        .map((cause) => `${look.id} ${cause}`),
    );
    expect(idle).toEqual([]);
    expect(doubles(looks.map(({ id }) => id))).toEqual([]);
    expect(looks.flatMap(({ favours, opposes }) => favours.filter((id) => opposes.includes(id)))).toEqual([]);
    expect(contraries.every(({ factor, cause }) => factor > 0 && factor < 1 && known.has(cause))).toBe(true);
  });

  it("question columns are probabilities, and each question is about one variable", () => {
    for (const { id, causes: about, answers } of questions) {
      for (let column = 0; column <= about.length; column++) {
        const sum = answers.reduce((total, { likelihood }) => total + likelihood[column]!, 0);
        expect(Math.abs(sum - 1), `${id} column ${column}`).toBeLessThan(1e-12);
      }
      const group = exclusiveCauses.find((states) => states.includes(about[0]!)) ?? [about[0]!];
      expect(about, id).toEqual(group);
    }
    expect(doubles([...questions.map(({ id }) => id), ...symptoms.map(({ id }) => id)])).toEqual([]);
    const asked = new Set<string>(questions.flatMap(({ causes: about }) => about));
    expect(causeIds.filter((id) => !asked.has(id))).toEqual([]);
  });

  it("priors leave every variable likely in order, and expect about one fault a bead", () => {
    for (const process of ["FCAW-S", "FCAW-G", "GMAW", "SMAW", "GTAW", null] as const) {
      const model = causeModel(process);
      expect(model.network.variables.every(({ prior }) => prior[0]! > 0.8)).toBe(true);
      const faults = [...model.priors.values()].reduce((a, b) => a + b, 0);
      expect(faults).toBeGreaterThan(0.5);
      expect(faults).toBeLessThan(1.5);
    }
  });
});
