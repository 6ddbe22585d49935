import { expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema, usualShare } from "@/lib/diagnose";

const changes = (setup: object) => {
  const answer = diagnose(DiagnoseInputSchema.parse({ setup, findings: [{ imperfection: "undercut" }] }));
  if (!answer.ok) throw new Error(answer.issues[0]?.code);
  return new Map(answer.value.causes.map(({ id, change }) => [id, change]));
};

it("says how far to go where nobody wrote down from where, and only there", () => {
  const unknown = changes({ process: "FCAW-S", electrodeClass: "E71T-11" });
  expect(usualShare(unknown.get("travel-fast")!)).toBe(0.2);
  expect(usualShare(unknown.get("wfs-high")!)).toBe(0.1);
  expect(usualShare(unknown.get("polarity")!)).toBeNull();
  expect(usualShare(unknown.get("contam")!)).toBeNull();
  const known = changes({ process: "FCAW-S", electrodeClass: "E71T-11", travelSpeedMmPerMin: 300 });
  expect(usualShare(known.get("travel-fast")!)).toBeNull();
});
