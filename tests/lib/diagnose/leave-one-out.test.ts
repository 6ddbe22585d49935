import { describe, expect, it } from "vitest";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { type CauseId } from "@/lib/diagnose/cause-ids";
import { contextOf } from "@/lib/diagnose/diagnose";
import { evidenceItems } from "@/lib/diagnose/evidence";
import { withoutEach } from "@/lib/diagnose/leave-one-out";
import { causeModel } from "@/lib/diagnose/model";
import { solverFor } from "@/lib/diagnose/network/infer";
import { readingsOf } from "@/lib/diagnose/readings/all";
import { causeProbabilities, weigh } from "@/lib/diagnose/weigh";
import { exampleSetups } from "@/lib/setup";

/** Invented beads with evidence of every kind. */
const beads = [
  { setup: { process: "FCAW-G" }, findings: [{ imperfection: "undercut" }, { imperfection: "spatter" }] },
  {
    setup: { ...exampleSetups[0]!.setup, outdoors: true },
    findings: [
      { imperfection: "surface-porosity", patterns: ["with-soot"], stretch: "whole-length" },
      { imperfection: "convex-bead" },
      { imperfection: "undercut", place: "upper-toe" },
    ],
    lookedForAbsent: ["spatter", "trapped-slag"],
    answers: { "stick-out-steady": "fault", "cold-arc": "yes", stubbing: "no" },
  },
  { setup: { process: "SMAW", amps: 90 }, findings: [], answers: { "consumable-dry": "fault" } },
].map((bead) => DiagnoseInputSchema.parse(bead));

describe("withoutEach", () => {
  it.each(beads.map((bead, i) => [i, bead] as const))(
    "bead %d: as inferring anew without the item",
    (_, bead) => {
      const model = causeModel(bead.setup.process, {});
      const context = contextOf(bead);
      const items = evidenceItems(bead, context.electrode, readingsOf(context));
      const weighed = weigh(model, items);
      const solver = solverFor(weighed.network, weighed.evidence.present);
      const without = withoutEach(model, items, weighed, solver, solver.solve(weighed.evidence));
      const anew = items.map((item) => {
        const rest = weigh(
          model,
          items.filter((other) => other !== item),
        );
        const own = solverFor(rest.network, rest.evidence.present);
        return causeProbabilities(model, own.solve(rest.evidence));
      });
      expect(items.length).toBeGreaterThan(0);
      for (const { id } of model.causes) {
        without(id as CauseId).forEach((p, i) => {
          const gap = Math.abs(p - anew[i]!.get(id)!);
          expect(gap, `${id} without ${items[i]!.key}`).toBeLessThan(1e-10);
        });
      }
    },
  );
});
