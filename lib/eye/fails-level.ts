import { judge, JudgeInputSchema } from "@/lib/accept";
import { isFillet } from "@/lib/trade";
import { isAskedFor, type EyeBead } from "./eye-bead";

/** What a bead may be judged against in training. */
export const eyeLevels = ["iso-5817-b", "iso-5817-c", "iso-5817-d"] as const;
export type EyeLevel = (typeof eyeLevels)[number];

const judged = ["lengthMm", "depthMm", "heightMm", "diameterMm"] as const;

/**
 * Whether anything that was drawn on a bead fails the level, by the same evaluator that judges real beads. It says nothing
 * of acceptance: clauses that no fault touches are not asked. null: it cannot be said of this bead.
 */
export function failsLevel(bead: EyeBead, level: EyeLevel): boolean | null {
  const asked = bead.faults.filter(isAskedFor);
  const { joint } = bead;
  if (joint === null) return null;
  const onPlate = joint === "bead-on-plate" || joint === "stringer-pad";
  const kind = onPlate ? "surfacing" : isFillet(joint) ? "fillet" : "butt";
  const verdict = judge(
    JudgeInputSchema.parse({
      criteriaId: level,
      weld: { kind, thicknessMm: bead.thicknessMm, lengthMm: bead.lengthMm },
      observations: asked.map(({ kind: imperfection, place, sizes, alongMm }, i) => ({
        id: `f${i}`,
        imperfection,
        place,
        alongMm,
        ...Object.fromEntries(judged.flatMap((name) => (name in sizes ? [[name, sizes[name]]] : []))),
      })),
      lookedFor: "all",
      only: [...new Set(asked.map(({ kind: imperfection }) => imperfection))],
    }),
  );
  if (asked.length === 0) return false;
  if (!verdict.ok) return null;
  if (verdict.value.verdict === "reject") return true;
  return verdict.value.verdict === "accept" ? false : null;
}
