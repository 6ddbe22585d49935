import { fail, issue, ok, type Result } from "@/lib/base";
import { electrodeOf, factsOf, processMeant, windowFor } from "@/lib/setup";
import type { ImperfectionId } from "@/lib/trade";
import { causeless, explainable } from "./causeless";
import { cautionsFor } from "./cautions";
import { adviceFor } from "./advice/advice-for";
import { settling } from "./advice/settling";
import { nextChecks } from "./checks";
import { contradictionsIn } from "./contradictions";
import { explain } from "./explanation";
import { DiagnoseInputSchema, type DiagnoseInput } from "./input";
import type { DiagnoseIssue } from "./issues";
import { lazily } from "./lazily";
import { linksFor } from "./model";
import { bestSet } from "./network/joint";
import { beadPhysics } from "./physics";
import { presentTuning, type Tuning } from "./tuning";
import type { ReadingContext } from "./reading";
import { rankCauses, type Ranking } from "./rank-causes";
import { questions } from "./tables/questions";
import { symptoms } from "./tables/symptoms";
import type { Diagnosis, JointExplanation } from "./types";

/**
 * From how a bead was run, what is marked and what was answered, to causes, the one change to try, and what to find out
 * next. Pure. Fails with the path and reason of whatever in the input is not as `DiagnoseInputSchema` says, or names a
 * question or answer that does not exist. Probabilities rank causes by published weights; they are not frequencies.
 * The ranking is worked out at once; the reasons of a cause, the joint explanation, the checks and the
 * explanation when they are first read, and then kept.
 */
export function diagnose(input: DiagnoseInput): Result<Diagnosis, DiagnoseIssue> {
  return diagnoseWith(input, presentTuning);
}

/** The same with other weights and limits, for those who judge them; no part of the door. */
export function diagnoseWith(input: DiagnoseInput, tuning: Tuning): Result<Diagnosis, DiagnoseIssue> {
  const parsed = DiagnoseInputSchema.safeParse(input);
  if (!parsed.success) {
    return fail(
      ...parsed.error.issues.map(({ path, message }) =>
        issue(
          "invalid-input" as const,
          path.map((part) => (typeof part === "number" ? part : String(part))),
          { reason: message },
        ),
      ),
    );
  }
  const unknown = unknownAnswers(parsed.data);
  return unknown.length > 0 ? fail(...unknown) : ok(diagnoseValid(withProcess(parsed.data), tuning));
}

/** A class that leaves no choice of process says it, whether or not somebody has written it down. */
function withProcess(input: DiagnoseInput): DiagnoseInput {
  return { ...input, setup: { ...input.setup, process: processMeant(input.setup) } };
}

function unknownAnswers({ answers }: DiagnoseInput): readonly DiagnoseIssue[] {
  return Object.entries(answers).flatMap(([question, answer]): readonly DiagnoseIssue[] => {
    const allowed = answersTo(question);
    if (allowed === null) return [issue("unknown-question", ["answers", question], { question })];
    return allowed.includes(answer)
      ? []
      : [issue("unknown-answer", ["answers", question], { question, answer })];
  });
}

/** Answer ids of a question, null when there is no such question. */
export function answersTo(questionId: string): readonly string[] | null {
  if (symptoms.some(({ id }) => id === questionId)) return ["yes", "no", "unsure"];
  return questions.find(({ id }) => id === questionId)?.answers.map(({ id }) => id) ?? null;
}

function diagnoseValid(input: DiagnoseInput, { weights, limits }: Tuning): Diagnosis {
  const context = contextOf(input);
  const ranking = rankCauses(input, context, weights);
  const { causes, model, weighed, solver, posterior } = ranking;
  const canExplain = explainable(input);
  const unexplained = causeless(input);
  const contradictions = contradictionsIn(input, context.facts);
  const advice = adviceFor(input, context, ranking, contradictions, limits);
  const { stopped, changes } = advice;
  const first = changes[0] ?? null;
  const suspect = first?.causeId ?? null;
  const joint = lazily(() => jointExplanation(ranking, input));
  const checks = lazily(() => nextChecks(model, weighed, solver, posterior, input));
  const explanation = lazily(() =>
    explain(input, { causes, joint: joint(), contradictions, stopped, canExplain, unexplained, suspect }),
  );
  return {
    causes,
    get joint() {
      return joint();
    },
    explainable: canExplain,
    causeless: unexplained,
    // After the inspector, the order stands ready; before, nothing is proposed as the first thing to do.
    firstChange: stopped ? null : first,
    nextChanges: stopped ? changes : changes.slice(1),
    get checks() {
      return checks();
    },
    get settling() {
      return changes.length === 0 && !stopped && canExplain.length > 0 ? settling(checks()) : [];
    },
    contradictions,
    cautions: cautionsFor(input, context.electrode, changes),
    estimates: context.physics.estimates,
    get explanation() {
      return explanation();
    },
  };
}

export function contextOf({ setup, bead }: DiagnoseInput): ReadingContext {
  const electrode = electrodeOf(setup);
  return {
    setup,
    bead,
    electrode,
    facts: factsOf(setup),
    window: windowFor(setup),
    physics: beadPhysics(setup, bead),
  };
}

/** The few causes that together explain the marks best; null where nothing marked can be explained. */
function jointExplanation(
  { model, weighed: { network, evidence }, posterior }: Ranking,
  input: DiagnoseInput,
): JointExplanation | null {
  const marked = explainable(input);
  if (marked.length === 0) return null;
  const { out, logJoint } = bestSet(network, evidence, 3);
  const causes = out.map(({ variable, state }) => model.variables[variable]![state - 1]!);
  if (causes.length === 0) return null;
  const made = (id: ImperfectionId) =>
    linksFor(id, model.process).some(({ cause }) => causes.includes(cause));
  return {
    causes,
    probability: Math.exp(logJoint - posterior.logEvidence),
    explains: marked.filter(made),
    leaves: marked.filter((id) => !made(id)),
  };
}
