import type { ImperfectionId } from "@/lib/trade";
import type { BeadShape } from "../geometry/bead";
import type { GrooveShape } from "../geometry/profile";
import { grooveProfile } from "../geometry/profile";
import type { Fault } from "../imperfections/paint-fault";
import type { ScenarioName } from "../scenarios";
import type { SceneSpec, ScenePose } from "../scene";

/** From the mildest that is still seen to the worst: what "at three severities" means everywhere here. */
export const severities = [1, 2, 3] as const;
export type Severity = (typeof severities)[number];

type Kind = Fault["kind"];
/** One value for each severity. */
type Three<T> = readonly [T, T, T];
/** Makes the scene of one severity out of the scenario's. */
type Change = (spec: SceneSpec, severity: Severity) => SceneSpec;

/** One imperfection shown alone, from near: a scenario of the demo set, what of it stays, and where the camera looks. */
export interface CloseUp {
  readonly id: ImperfectionId;
  readonly scenario: ScenarioName;
  /** Faults of the scenario that stay; everything else but a little spatter is left out. */
  readonly keeps: readonly Kind[];
  readonly changes: readonly Change[];
  /** Middle of the picture in the plan frame, and how much of the weld it shows, mm. */
  readonly at: readonly [number, number];
  readonly fieldMm: number;
  readonly pose?: Partial<ScenePose>;
  /** What grows with severity, worked out from the truth's sizes of this imperfection. */
  readonly grows: (sizes: readonly Readonly<Record<string, number>>[]) => number;
}

const pick = <T>(three: Three<T>, severity: Severity): T => three[severity - 1]!;

/** The scenario's fault of a kind with other figures at each severity; with `only` only the so-manieth of them stays. */
export const fault =
  <K extends Kind>(kind: K, figures: Three<Partial<Extract<Fault, { kind: K }>>>, only = 0): Change =>
  (spec, severity) => {
    let seen = -1;
    const faults = spec.faults.flatMap((one): readonly Fault[] => {
      if (one.kind !== kind) return [one];
      seen += 1;
      return seen === only ? [{ ...one, ...pick(figures, severity) } as Fault] : [];
    });
    return { ...spec, faults };
  };

/** A fault the scenario does not have. */
export const added =
  (figures: Three<Fault | readonly Fault[]>): Change =>
  (spec, severity) => ({ ...spec, faults: [...spec.faults, pick(figures, severity)].flat() });

/** The so-manieth bead, laid otherwise. */
export const bead =
  (figures: Three<Partial<BeadShape>>, index = 0): Change =>
  (spec, severity) => ({
    ...spec,
    beads: spec.beads.map((one, i) => (i === index ? { ...one, ...pick(figures, severity) } : one)),
  });

/** The same beads in another groove. */
export const groove =
  (shapes: Three<GrooveShape>): Change =>
  (spec, severity) => ({ ...spec, profile: grooveProfile(pick(shapes, severity)) });

/** Anything else of the scene. */
export const scene =
  (change: (spec: SceneSpec, severity: Severity) => Partial<SceneSpec>): Change =>
  (spec, severity) => ({ ...spec, ...change(spec, severity) });

/** Sum and greatest of one size over all places where the imperfection lies. */
export const sum =
  (name: string): CloseUp["grows"] =>
  (all) =>
    all.reduce((total, sizes) => total + sizes[name]!, 0);
export const greatest =
  (name: string): CloseUp["grows"] =>
  (all) =>
    Math.max(...all.map((sizes) => sizes[name]!));

const ASPECT = 4 / 3;

/** The scene of a close-up: the imperfection alone, no scale object, the camera near. */
export function closeUpScene(spec: SceneSpec, closeUp: CloseUp, severity: Severity): SceneSpec {
  const kept = { ...spec, faults: spec.faults.filter(({ kind }) => closeUp.keeps.includes(kind)) };
  const changed = closeUp.changes.reduce<SceneSpec>((now, change) => change(now, severity), kept);
  return {
    ...changed,
    scaleObject: null,
    bench: "steel-table",
    pose: {
      ...spec.pose,
      rollDeg: 0,
      ...closeUp.pose,
      target: closeUp.at,
      aspect: ASPECT,
      fieldWidthMm: closeUp.fieldMm,
      distanceMm: Math.max(80, 2.2 * closeUp.fieldMm),
    },
  };
}
