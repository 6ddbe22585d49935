import { commonPractice, isGasShielded } from "@/lib/trade";
import { finding, type SetupFinding, type SetupRule } from "./finding";
import type { RunSetup } from "./run-setup";
import {
  chromiumPublished,
  cleanliness,
  waterPublished,
  primerPublished,
  windPublished,
  zincPublished,
} from "./sources";
import { electrodesMeant } from "./window-for";

/** Shielded by gas as far as anything recorded says so: the process, the class or a gas that is named. */
function usesGas(setup: RunSetup): boolean {
  const rows = electrodesMeant(setup);
  const byClass = rows.length > 0 && rows.every((row) => isGasShielded(row.process));
  const byProcess = setup.process !== null && isGasShielded(setup.process);
  return byClass || byProcess || (setup.gas !== null && setup.gas !== "none");
}

export const gasInWind: SetupRule = (setup) =>
  setup.outdoors === true && usesGas(setup)
    ? [finding("gas-in-wind", "warn", ["outdoors", "gas", "process"], { source: windPublished })]
    : [];

export const surfaceCautions: SetupRule = (setup) => {
  switch (setup.surface) {
    case null:
    case "bright":
      return [];
    case "galvanised":
      return [finding("zinc-fume", "warn", ["surface"], { source: zincPublished, safety: true })];
    case "primed":
      return [finding("primer-or-paint", "warn", ["surface"], { source: primerPublished, safety: true })];
    case "oil-or-paint":
      return [finding("oil-or-paint", "warn", ["surface"], { source: cleanliness, safety: true })];
    case "wet":
      return [finding("wet-surface", "stop", ["surface"], { source: waterPublished, safety: true })];
    case "heavy-rust":
      return [finding("heavy-rust", "warn", ["surface"], { source: cleanliness })];
    case "mill-scale":
    case "light-rust":
      return scaleUnderGas(setup);
  }
};

/** Self-shielded wire bears scale and light rust that would spoil a gas-shielded bead. */
function scaleUnderGas(setup: RunSetup): readonly SetupFinding[] {
  return usesGas(setup)
    ? [finding("scale-under-gas", "note", ["surface", "process"], { source: commonPractice })]
    : [];
}

export const chromiumFume: SetupRule = (setup) => {
  const rows = electrodesMeant(setup);
  const byWire = rows.length > 0 && rows.every((row) => row.metal === "stainless");
  if (setup.baseMetal !== "stainless" && !byWire) return [];
  const field = setup.baseMetal === "stainless" ? "baseMetal" : "electrodeClass";
  return [finding("chromium-fume", "note", [field], { source: chromiumPublished, safety: true })];
};
