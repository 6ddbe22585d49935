import { fail, ok, type Result } from "@/lib/base";
import { electrodeClassesNamed, isFillet, isSlagProcess } from "@/lib/trade";
import { bisectingAngleDeg, electrodeOf, type RunSetup, type SetupField } from "@/lib/setup";
import { setupOfAsk, type PlanAsk } from "./ask";
import { objections } from "./gate";
import { planIssue, type PlanIssue } from "./issues";
import { plannedJoints } from "./tables/figures";

/** What has to be known before anything can be said, in the order it is asked for. */
const needed = ["electrodeClass", "electrodeDiameterMm", "joint", "position", "thicknessMm"] as const;

/**
 * The ask as a set-up in which everything is settled but the dials: what the class leaves no choice about is filled in, the
 * base metal is the wire's own. Fails with what is still needed, what is not planned here, or what the check objects to.
 */
export function settle(ask: PlanAsk): Result<RunSetup, PlanIssue> {
  const setup = setupOfAsk(ask);
  const open = needed.filter((field) => setup[field] === null);
  if (open.length > 0) return fail(...open.map((field) => fieldNeeded(field)));
  const electrode = electrodeOf(setup);
  // Wire and rod of one name: the process says which.
  if (electrodeClassesNamed(setup.electrodeClass!, setup.process).length > 1)
    return fail(fieldNeeded("process"));
  if (electrode === null) return fail(planIssue("class-not-known", "electrodeClass"));
  if (electrode.process === "SMAW" || electrode.process === "GTAW")
    return fail(planIssue("process-not-planned", "process", { process: electrode.process }));
  if (electrode.gases.length === 0 || electrode.polarity.length === 0)
    return fail(planIssue("class-open", "electrodeClass", { electrode: electrode.id }));
  if (!plannedJoints.includes(setup.joint!)) return fail(planIssue("joint-not-planned", "joint"));
  const [gas, otherGas] = electrode.gases;
  const settled: RunSetup = {
    ...setup,
    process: setup.process ?? electrode.process,
    polarity: setup.polarity ?? electrode.polarity[0]!,
    gas: setup.gas ?? (otherGas === undefined ? gas! : null),
    baseMetal: setup.baseMetal ?? electrode.metal,
    travelDirection: isSlagProcess(electrode.process) ? "drag" : "push",
    workAngleDeg: bisectingAngleDeg(setup.joint!),
    passCount: 1,
    targetLegMm: isFillet(setup.joint!) ? setup.targetLegMm : null,
    progression: setup.position === "vertical" ? setup.progression : null,
  };
  const still = stillOpen(settled);
  const wrong = still.length > 0 ? still : objections(settled);
  return wrong.length > 0 ? fail(...wrong) : ok(settled);
}

function stillOpen({ process, transfer, gas, position, progression }: RunSetup): readonly PlanIssue[] {
  return [
    ...(process === "GMAW" && transfer === null ? [fieldNeeded("transfer")] : []),
    ...(gas === null ? [fieldNeeded("gas")] : []),
    ...(position === "vertical" && progression === null ? [fieldNeeded("progression")] : []),
  ];
}

const fieldNeeded = (field: SetupField): PlanIssue => planIssue("field-needed", field);
