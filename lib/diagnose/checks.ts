import { entropyBits } from "@/lib/numeric";
import { type ImperfectionId, imperfections, type Process, withoutDocument } from "@/lib/trade";
import type { DiagnoseInput } from "./input";
import { linksFor, placeOf, signIndex, type CauseModel, type SignId } from "./model";
import { information, roughInformation, type Tells } from "./network/information";
import type { Solver } from "./network/infer";
import type { Posterior } from "./network/types";
import { ALL } from "./tables/process-groups";
import { questions } from "./tables/questions";
import { symptoms } from "./tables/symptoms";
import type { Check } from "./types";
import type { Weighed } from "./weigh";
import { strongest } from "./witness";

/** Seconds to look for an imperfection again, and to mark it when it is there. Own estimate. */
const LOOK_S = 30;
/** Seconds for one that sight alone does not settle: light, lens, and then still a doubt. Own estimate. */
const CLOSE_LOOK_S = 120;
/** Below this a check is not worth a line. */
const LEAST_BITS = 0.005;

/**
 * One inference dearer than this, in multiply-adds, and the signs are ranked roughly: there are more than fifty of them, and
 * their exact information takes an inference and five sums each, together about 50 ms at this limit (about twelve
 * different imperfections marked).
 */
const DEAREST_EXACT = 400_000;

/**
 * What to find out next, by expected information per second: the expected drop of the joint entropy over all causes.
 * For a question about one thing that is exact, because the answer depends on that thing alone:
 * I(answer; everything) = I(answer; thing). For a sign that several things can make it is worked out by inference with
 * the answer (network/information.ts), to 0.0003 bit; only when very much is marked it is taken from the marginals, as
 * the information about the one thing the sign tells most about. Never negative.
 */
export function nextChecks(
  model: CauseModel,
  weighed: Weighed,
  solver: Solver,
  posterior: Posterior,
  input: DiagnoseInput,
  exact = solver.cost <= DEAREST_EXACT,
): readonly Check[] {
  const known = (id: SignId) =>
    input.findings.some(({ imperfection }) => imperfection === id) ||
    input.lookedForAbsent.some((absent) => absent === id) ||
    input.answers[id] !== undefined;
  const tells = (id: SignId): Tells =>
    exact
      ? information(weighed.network, weighed.evidence, solver, posterior, signIndex(id))
      : roughInformation(weighed.network, posterior, signIndex(id));
  return [
    ...questionChecks(model, posterior, input),
    ...symptoms
      .filter(({ id, processes }) => !known(id) && isAskedIn(model.process, processes))
      .map((row) => symptomCheck(tells(row.id), row)),
    ...(Object.keys(imperfections) as ImperfectionId[])
      .filter((id) => !known(id) && linksFor(id, model.process).length > 0)
      .map((id) => lookCheck(tells(id), id)),
  ]
    .filter(({ informationBits }) => informationBits >= LEAST_BITS)
    .toSorted((a, b) => b.bitsPerMinute - a.bitsPerMinute || a.id.localeCompare(b.id));
}

/** While nobody said how it was welded, only what can be asked of any process: not whether the rod stuck. */
const isAskedIn = (process: Process | null, processes: readonly Process[]): boolean =>
  (process === null ? ALL : [process]).every((one) => processes.includes(one));

const rate = (bits: number, effortS: number) => ({
  informationBits: bits,
  effortS,
  bitsPerMinute: (bits / effortS) * 60,
});

function questionChecks(model: CauseModel, posterior: Posterior, input: DiagnoseInput): readonly Check[] {
  return questions.flatMap((row): readonly Check[] => {
    if (input.answers[row.id] !== undefined || (row.field !== null && input.setup[row.field] !== null))
      return [];
    const places = row.causes.map((cause) => placeOf(model, cause));
    const variable = places.find((place) => place !== null)?.variable;
    if (variable === undefined) return [];
    const states = posterior.marginals[variable]!;
    const p = [states[0]!, ...places.map((place) => (place === null ? 0 : states[place.state]!))];
    const answers = row.answers.map(({ id, text, likelihood }) => ({
      id,
      text,
      probability: likelihood.reduce((sum, l, i) => sum + l * p[i]!, 0),
    }));
    const blurred = p.map(
      (weight, i) => weight * entropyBits(row.answers.map(({ likelihood }) => likelihood[i]!)),
    );
    const bits =
      entropyBits(answers.map(({ probability }) => probability)) - blurred.reduce((a, b) => a + b, 0);
    return [
      {
        id: row.id,
        kind: "question",
        question: row.question,
        how: row.how,
        answers,
        imperfection: null,
        ...rate(Math.max(0, bits), row.effortS),
        source: strongest(...row.documents, "memory"),
      },
    ];
  });
}

function symptomCheck({ yes, bits }: Tells, row: (typeof symptoms)[number]): Check {
  return {
    id: row.id,
    kind: "question",
    question: row.question,
    how: row.how,
    answers: [
      { id: "yes", text: "Yes", probability: yes },
      { id: "no", text: "No", probability: 1 - yes },
    ],
    imperfection: null,
    ...rate(bits, row.effortS),
    source: strongest(...row.witnesses),
  };
}

function lookCheck({ yes, bits }: Tells, id: ImperfectionId): Check {
  const { name, look, inspectorFirst } = imperfections[id];
  return {
    id: `look:${id}`,
    kind: "look",
    question: `${name}: is it there?`,
    how: look,
    answers: [
      { id: "present", text: "Yes: mark it", probability: yes },
      { id: "absent", text: "No, looked for", probability: 1 - yes },
    ],
    imperfection: id,
    ...rate(bits, inspectorFirst ? CLOSE_LOOK_S : LOOK_S),
    source: withoutDocument("the links of this imperfection to its causes", "derived"),
  };
}
