import {
  alsoUsedSource,
  commonPractice,
  type ElectrodeClass,
  electrodeClasses,
  type Gas,
  type Polarity,
  positionsMeant,
} from "@/lib/trade";
import { finding, inOrder, unusual, type SetupRule } from "./finding";
import { coredManuals, gasBasics, jointDesign, stainlessBasics } from "./sources";
import { electrodesMeant } from "./window-for";

/**
 * Rules that hold a set-up against its classification. A name may mean two rows (wire or rod): a rule speaks only when
 * it would speak for every one of them.
 */
const union = <T>(rows: readonly ElectrodeClass[], of: (row: ElectrodeClass) => readonly T[]): readonly T[] =>
  rows.some((row) => of(row).length === 0) ? [] : [...new Set(rows.flatMap((row) => of(row)))];

export const processAgainstClass: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const [row] = rows;
  // A class whose gases are open ("G") may be either kind of flux-cored wire.
  const open = rows.some((r) => r.gases.length === 0) && setup.process?.startsWith("FCAW");
  if (row === undefined || setup.process === null || open) return [];
  if (rows.some((r) => r.process === setup.process)) return [];
  const data = { electrode: row.id, recorded: setup.process, wanted: row.process };
  return [
    finding("process-against-class", "stop", ["process", "electrodeClass"], { data, source: row.source }),
  ];
};

export const polarityAgainstClass: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const [row] = rows;
  const allowed = union<Polarity>(rows, (r) => r.polarity);
  if (row === undefined || setup.polarity === null || allowed.length === 0) return [];
  const data = { electrode: row.id, recorded: setup.polarity, wanted: allowed.join(" or ") };
  const said = [["polarity", "electrodeClass"], { data, source: row.source }] as const;
  return allowed.includes(setup.polarity)
    ? [inOrder("polarity-against-class", [...said[0]], said[1])]
    : [finding("polarity-against-class", "stop", [...said[0]], said[1])];
};

/**
 * Without a class: a polarity that no class of this process runs (GMAW on DCEN, GTAW on DCEP), or, softer, one that few
 * of them do (gas-shielded cored wire on DCEN is asked for by some basic wires only).
 */
export const polarityUnusual: SetupRule = (setup) => {
  const { process, polarity } = setup;
  if (process === null || polarity === null) return [];
  const rows = electrodeClasses.filter((row) => row.process === process);
  const [row] = rows;
  if (row === undefined || rows.some((r) => r.polarity.length === 0)) return [];
  const running = rows.filter((r) => r.polarity.includes(polarity)).length;
  const usual = [...new Set(rows.flatMap((r) => r.polarity))].filter(
    (one) => rows.filter((r) => r.polarity.includes(one)).length > rows.length / 2,
  );
  const said = {
    data: { process, recorded: polarity, wanted: usual.join(" or ") },
    source: row.source,
  };
  const fields = ["polarity", "process"] as const;
  if (running === 0) return [finding("polarity-unusual-for-process", "warn", [...fields], said)];
  // Covered rods run on every pole, each class on its own.
  if (process === "SMAW" || electrodesMeant(setup).length > 0 || usual.length === 0) return [];
  return [(usual.includes(polarity) ? inOrder : unusual)("polarity-unusual-for-process", [...fields], said)];
};

export const gasMissing: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const off = setup.gas === "none" || setup.gasFlowLPerMin === 0;
  const byProcess = setup.process === "FCAW-G" || setup.process === "GMAW" || setup.process === "GTAW";
  const byClass = rows.length > 0 && rows.every((r) => r.gases.length > 0 && !r.gases.includes("none"));
  if (!byProcess && !byClass) return [];
  if (!off) return [];
  const needs = byClass ? (rows[0]?.id ?? "") : (setup.process ?? "");
  const field = setup.gas === "none" ? "gas" : "gasFlowLPerMin";
  return [
    finding("gas-missing", "stop", [field, "electrodeClass", "process"], {
      data: { needs },
      source: rows[0]?.source ?? gasBasics,
    }),
  ];
};

export const gasOnGasless: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const byClass = rows.length > 0 && rows.every((r) => r.gases.length === 1 && r.gases[0] === "none");
  const byProcess = setup.process === "FCAW-S" || setup.process === "SMAW";
  if (setup.gas === null || setup.gas === "none" || (!byClass && !byProcess)) return [];
  const data = { gas: setup.gas, electrode: byClass ? (rows[0]?.id ?? "") : (setup.process ?? "") };
  return [
    finding("gas-on-gasless", "warn", ["gas", "electrodeClass", "process"], {
      data,
      source: rows[0]?.source ?? coredManuals,
    }),
  ];
};

export const gasAgainstClass: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const [row] = rows;
  const allowed = union<Gas>(rows, (r) => r.gases);
  if (row === undefined || setup.gas === null || setup.gas === "none" || allowed.length === 0) return [];
  if (allowed.every((gas) => gas === "none")) return [];
  const data = {
    electrode: row.id,
    recorded: setup.gas,
    wanted: allowed.filter((g) => g !== "none").join(" or "),
  };
  return allowed.includes(setup.gas)
    ? [inOrder("gas-against-class", ["gas", "electrodeClass"], { data, source: row.source })]
    : [finding("gas-against-class", "warn", ["gas", "electrodeClass"], { data, source: row.source })];
};

/**
 * Stainless welded with solid wire, whatever the class: carbon dioxide, pure or as a quarter of the mix, oxidises it and puts carbon into
 * it. Flux-cored stainless wire is made for those gases.
 */
export const gasAgainstMetal: SetupRule = (setup) => {
  const { process, baseMetal, gas } = setup;
  if (process !== "GMAW" || baseMetal !== "stainless" || gas === null || gas === "none") return [];
  if (!reactive.includes(gas)) return [];
  const data = { recorded: gas, wanted: "98Ar-2CO2 or 98Ar-2O2 or 90He-7.5Ar-2.5CO2" };
  return [finding("gas-against-metal", "warn", ["gas", "baseMetal"], { data, source: commonPractice })];
};
const reactive: readonly Gas[] = ["CO2", "75Ar-25CO2", "80Ar-20CO2"];

export const gasOnTungsten: SetupRule = ({ process, gas }) => {
  if (process !== "GTAW" || gas === null || gas === "none" || gas === "Ar") return [];
  return [
    finding("gas-reactive-on-tungsten", "stop", ["gas", "process"], { data: { gas }, source: gasBasics }),
  ];
};

export const gasCannotSpray: SetupRule = ({ process, transfer, gas }) => {
  if (process !== "GMAW" || transfer !== "spray" || (gas !== "CO2" && gas !== "75Ar-25CO2")) return [];
  return [finding("gas-cannot-spray", "warn", ["gas", "transfer"], { data: { gas }, source: gasBasics })];
};

export const flowWithoutGas: SetupRule = ({ gas, gasFlowLPerMin }) => {
  if (gas !== "none" || gasFlowLPerMin === null || gasFlowLPerMin === 0) return [];
  const data = { value: gasFlowLPerMin };
  return [finding("flow-without-gas", "warn", ["gasFlowLPerMin", "gas"], { data, source: commonPractice })];
};

export const positionAgainstClass: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const [row] = rows;
  const allowed = union(rows, (r) => r.positions);
  if (row === undefined || setup.position === null || allowed.length === 0) return [];
  const meant = positionsMeant(setup.position, setup.progression);
  if (meant.some((p) => allowed.includes(p))) return [];
  const data = { electrode: row.id, recorded: meant.join(" or "), wanted: allowed.join(", ") };
  const fields = ["position", "electrodeClass"] as const;
  if (meant.some((p) => rows.some((r) => r.alsoUsed.includes(p))))
    return [finding("position-beyond-class-list", "note", [...fields], { data, source: alsoUsedSource })];
  // Flat-and-horizontal wire lets the pool run out; a wrong progression only welds badly.
  const flatOnly = allowed.every((p) => p === "flat" || p === "horizontal");
  return flatOnly
    ? [finding("position-against-class", "stop", [...fields], { data, source: row.source })]
    : [
        finding("progression-against-class", "warn", ["position", "progression", "electrodeClass"], {
          data,
          source: row.source,
        }),
      ];
};

/** 309L is the usual filler between stainless and carbon steel, so it is never out of place. */
export const metalAgainstClass: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const [row] = rows;
  if (row === undefined || setup.baseMetal === null || row.id.includes("309L")) return [];
  const base = setup.baseMetal === "stainless" ? "stainless" : "carbon-steel";
  if (rows.some((r) => r.metal === base)) return [];
  const data = { electrode: row.id, base: setup.baseMetal, metal: row.metal };
  return [
    finding("metal-against-class", "warn", ["baseMetal", "electrodeClass"], {
      data,
      source: stainlessBasics,
    }),
  ];
};

export const passesAgainstClass: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const [row] = rows;
  if (row === undefined || setup.passCount === null) return [];
  const data = { electrode: row.id, passes: setup.passCount };
  const fields = ["passCount", "electrodeClass"] as const;
  if (setup.passCount > 1 && rows.every((r) => r.passes === "single"))
    return [finding("single-pass-wire-in-passes", "stop", [...fields], { data, source: row.source })];
  if (setup.passCount > LIMITED_PASSES && rows.every((r) => r.passes === "limited"))
    return [finding("limited-pass-wire-in-passes", "note", [...fields], { data, source: jointDesign })];
  return setup.passCount === 1 || rows.every((r) => r.passes === "multi")
    ? [inOrder("single-pass-wire-in-passes", [...fields], { data, source: row.source })]
    : [];
};

/** Where we start to remind of the data sheet; wires differ, the sheet says. */
export const LIMITED_PASSES = 3;
