import { binaryEntropyBits, entropyBits } from "@/lib/numeric";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import { cite } from "./cite";
import type { DiagnoseInput } from "./input";
import { linksFor, placeOf, signIndex, type CauseModel, type SignId } from "./model";
import type { Network, Posterior } from "./network/types";
import { questions } from "./tables/questions";
import { symptoms } from "./tables/symptoms";
import type { Check } from "./types";

/** Seconds to look for an imperfection again. Own estimate. */
const LOOK_S = 20;
/** Below this a check is not worth a line. */
const LEAST_BITS = 0.005;

/**
 * What to find out next, by expected information per second. For a question about one thing the information is the
 * exact expected drop of the joint entropy over all causes: the answer depends on that thing alone, so
 * I(answer; everything) = I(answer; thing). For a sign that several things can make it is a lower bound of that drop:
 * the information about the one thing it tells most about. It is never overstated, and never negative.
 */
export function nextChecks(
  model: CauseModel,
  network: Network,
  posterior: Posterior,
  input: DiagnoseInput,
): readonly Check[] {
  const known = (id: SignId) =>
    input.findings.some(({ imperfection }) => imperfection === id) ||
    input.lookedForAbsent.some((absent) => absent === id) ||
    input.answers[id] !== undefined;
  return [
    ...questionChecks(model, posterior, input),
    ...symptoms
      .filter(
        ({ id, processes }) => !known(id) && (model.process === null || processes.includes(model.process)),
      )
      .map((row) => symptomCheck(model, network, posterior, row)),
    ...(Object.keys(imperfections) as ImperfectionId[])
      .filter((id) => !known(id) && linksFor(id, model.process).length > 0)
      .map((id) => lookCheck(network, posterior, id)),
  ]
    .filter(({ informationBits }) => informationBits >= LEAST_BITS)
    .toSorted((a, b) => b.bitsPerMinute - a.bitsPerMinute || a.id.localeCompare(b.id));
}

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
        source: cite(row.documents, true)[0]!,
      },
    ];
  });
}

function symptomCheck(
  model: CauseModel,
  network: Network,
  posterior: Posterior,
  row: (typeof symptoms)[number],
): Check {
  const { yes, bits } = signInformation(network, posterior, signIndex(row.id));
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
    source: cite(row.documents, row.memory)[0]!,
  };
}

function lookCheck(network: Network, posterior: Posterior, id: ImperfectionId): Check {
  const { yes, bits } = signInformation(network, posterior, signIndex(id));
  const { name, look } = imperfections[id];
  return {
    id: `look:${id}`,
    kind: "look",
    question: `Is there ${name.toLowerCase()}?`,
    how: look,
    answers: [
      { id: "present", text: "Yes: mark it", probability: yes },
      { id: "absent", text: "No, looked for", probability: 1 - yes },
    ],
    imperfection: id,
    ...rate(bits, LOOK_S),
    source: { document: "the links of this imperfection to its causes", confidence: "derived" },
  };
}

/**
 * Chance of a sign not yet looked for, and the information it holds about the one variable it tells most about.
 * The variables are taken as independent given the evidence so far when the others are averaged out.
 */
function signInformation(
  network: Network,
  posterior: Posterior,
  index: number,
): { yes: number; bits: number } {
  const { leak, links } = network.signs[index]!;
  const silent = new Map<number, number[]>();
  for (const { variable, state, q } of links) {
    const row = silent.get(variable) ?? posterior.marginals[variable]!.map(() => 1);
    row[state] = 1 - q;
    silent.set(variable, row);
  }
  const mean = [...silent].map(([variable, row]) =>
    row.reduce((sum, s, state) => sum + s * posterior.marginals[variable]![state]!, 0),
  );
  const no = mean.reduce((product, m) => product * m, 1 - leak);
  let bits = 0;
  [...silent].forEach(([variable, row], i) => {
    const others = no / mean[i]!;
    const blurred = row.reduce(
      (sum, s, state) => sum + posterior.marginals[variable]![state]! * binaryEntropyBits(s * others),
      0,
    );
    bits = Math.max(bits, binaryEntropyBits(no) - blurred);
  });
  return { yes: 1 - no, bits };
}
