import type { Source } from "@/lib/base";
import { isPositionOut, type RunSetup } from "@/lib/setup";
import {
  commonPractice,
  type ElectrodeClass,
  type Finding,
  type ImperfectionId,
  imperfections,
  ownEstimate,
  type Pattern,
} from "@/lib/trade";
import { causeIds, type CauseId } from "./cause-ids";
import type { DiagnoseInput } from "./input";
import { looks, type Look, type Contrary, contraries } from "./tables/looks";
import { type Situation, situations, type When } from "./tables/situations";
import { symptoms, type SymptomId } from "./tables/symptoms";
import { questions } from "./tables/questions";
import type { Odds, Reading } from "./reading";
import type { Amount, EvidenceKind } from "./types";
import { madeForDownhill } from "./readings/hand";
import type { SignId } from "./model";
import { presentWeights, type Weights } from "./tuning";
import { sourcesOf } from "./witness";

/** One thing known about the bead, with all it does to the network. Leaving it out is leaving out this record. */
export interface EvidenceItem {
  readonly key: string;
  readonly kind: EvidenceKind;
  readonly imperfection: ImperfectionId | null;
  readonly present: SignId | null;
  readonly absent: SignId | null;
  /** Factors on the odds of causes. */
  readonly odds: Odds;
  /** Likelihood rows of answers: [in order, cause, cause, ...] over these causes. */
  readonly answer: { readonly causes: readonly CauseId[]; readonly likelihood: readonly number[] } | null;
  /** Factors on the strength -log(1 - q) of the links to `imperfection`. */
  readonly strength: Odds;
  /** Links to `imperfection` that hold for this bead, as q: the stronger of it and the table's own. */
  readonly makes: Odds;
  readonly forText: Partial<Readonly<Record<CauseId, string>>>;
  readonly againstText: string;
  readonly amounts: readonly Amount[];
  readonly sources: readonly Source[];
}

const blank = {
  imperfection: null,
  present: null,
  absent: null,
  odds: {},
  answer: null,
  strength: {},
  makes: {},
  forText: {},
  againstText: "",
  amounts: [],
} satisfies Partial<EvidenceItem>;

/** Everything known, in a fixed order that does not depend on the order of marks. */
export function evidenceItems(
  input: DiagnoseInput,
  electrode: ElectrodeClass | null,
  readings: readonly Reading[],
  weights: Weights = presentWeights,
): readonly EvidenceItem[] {
  const marked = [...new Set(input.findings.map(({ imperfection }) => imperfection))].toSorted();
  const absent = [...new Set(input.lookedForAbsent)].filter((id) => !marked.includes(id)).toSorted();
  return [
    ...marked.map((id) => markItem(id, contrariesIn(input, electrode))),
    ...marked.flatMap((id) => lookItems(id, input.findings, weights)),
    ...marked.flatMap((id) => situationItems(id, input, electrode, weights)),
    ...patternSymptoms(input),
    ...absent.map(absentItem),
    ...readings.map(readingItem),
    ...Object.entries(input.answers)
      .toSorted(([a], [b]) => a.localeCompare(b))
      .flatMap(([question, answer]) => answerItems(question, answer)),
  ];
}

/**
 * Marks that are the opposite of what a cause makes, as far as they are on this bead: none where the circumstances make the
 * cause leave that very mark.
 */
export function contrariesIn(input: DiagnoseInput, electrode: ElectrodeClass | null): readonly Contrary[] {
  const marks = new Set(input.findings.map(({ imperfection }) => imperfection));
  return contraries.filter(
    ({ imperfection, cause }) =>
      marks.has(imperfection) &&
      situationsOf(imperfection, input, electrode).every(({ makes }) => makes[cause] === undefined),
  );
}

/** Whether every mark on the bead is one that a hanging pool leaves: then nothing makes it hotter but a reading that is low. */
export function hangs(input: DiagnoseInput, electrode: ElectrodeClass | null): boolean {
  const ids = [...new Set(input.findings.map(({ imperfection }) => imperfection))];
  return (
    ids.length > 0 &&
    ids.every((id) => situationsOf(id, input, electrode).some(({ when }) => when.hanging === true))
  );
}

function markItem(id: ImperfectionId, inForce: readonly Contrary[]): EvidenceItem {
  const against = inForce.filter((row) => row.imperfection === id);
  return {
    ...blank,
    key: `mark:${id}`,
    kind: "mark",
    imperfection: id,
    present: id,
    odds: Object.fromEntries(against.map(({ cause, factor }) => [cause, factor])),
    sources: [ownEstimate],
  };
}

function absentItem(id: ImperfectionId): EvidenceItem {
  return {
    ...blank,
    key: `absent:${id}`,
    kind: "absent",
    imperfection: id,
    absent: id,
    sources: [ownEstimate],
  };
}

/**
 * Looks of all marks of one imperfection together: the same look on five marks is one look. A place, stretch or pattern
 * nobody ticked is not "no". A clear look tells how the mark came to lie where it does; the leaning ones that go with
 * it (weave turns lie at both toes) then tell nothing of their own.
 */
function lookItems(
  id: ImperfectionId,
  findings: readonly Finding[],
  weights: Weights,
): readonly EvidenceItem[] {
  const mine = findings.filter(({ imperfection }) => imperfection === id);
  const seen = looks.filter(
    (look) => look.imperfections.includes(id) && mine.some((finding) => shows(look, finding, mine)),
  );
  const clear = seen.filter(({ force }) => force === "clear");
  return (clear.length > 0 ? clear : seen).map((look) => lookItem(id, look, weights));
}

function shows(look: Look, finding: Finding, all: readonly Finding[]): boolean {
  const place = placesOf(all);
  return (
    (finding.place !== null && look.places.includes(place ?? finding.place)) ||
    (finding.stretch !== null && look.stretches.includes(finding.stretch)) ||
    finding.patterns.some((pattern) => look.patterns.includes(pattern))
  );
}

/** Marks on opposite toes are a mark on both toes. */
function placesOf(findings: readonly Finding[]): "both-toes" | null {
  const has = (place: Finding["place"]) => findings.some((finding) => finding.place === place);
  const both =
    has("both-toes") || (has("upper-toe") && has("lower-toe")) || (has("left-toe") && has("right-toe"));
  return both ? "both-toes" : null;
}

function lookItem(id: ImperfectionId, look: Look, { lookForce }: Weights): EvidenceItem {
  const { favours, opposes } = lookForce[look.force];
  return {
    ...blank,
    key: `look:${id}:${look.id}`,
    kind: "look",
    imperfection: id,
    strength: Object.fromEntries([
      ...(look.force === "clear" ? causeIds : look.opposes).map((cause) => [cause, opposes]),
      ...look.favours.map((cause) => [cause, favours]),
    ]),
    forText: Object.fromEntries(look.favours.map((cause) => [cause, look.sentence])),
    againstText: look.sentence,
    sources: sourcesOf(look.witnesses),
  };
}

function situationsOf(
  id: ImperfectionId,
  { setup, findings }: Pick<DiagnoseInput, "setup" | "findings">,
  electrode: ElectrodeClass | null,
): readonly Situation[] {
  const mine = findings.filter(({ imperfection }) => imperfection === id);
  return situations.filter(
    (row) => row.imperfections.includes(id) && holds(row.when, setup, electrode, mine),
  );
}

/** Circumstances of this bead under which a mark comes of other causes than usual. */
function situationItems(
  id: ImperfectionId,
  { setup, findings }: DiagnoseInput,
  electrode: ElectrodeClass | null,
  { linkStrength, lookForce }: Weights,
): readonly EvidenceItem[] {
  return situationsOf(id, { setup, findings }, electrode).map((row) => ({
    ...blank,
    key: `situation:${id}:${row.id}`,
    kind: "look" as const,
    imperfection: id,
    makes: Object.fromEntries(
      Object.entries(row.makes).map(([cause, weight]) => [cause, linkStrength[weight]]),
    ),
    strength: Object.fromEntries(row.opposes.map((cause) => [cause, lookForce.clear.opposes])),
    forText: Object.fromEntries(Object.keys(row.makes).map((cause) => [cause, row.sentence])),
    againstText: row.sentence,
    sources: [commonPractice],
  }));
}

export function holds(
  { hanging, downByClass, joints, processes, stretches, places }: When,
  setup: RunSetup,
  electrode: ElectrodeClass | null,
  marks: readonly Finding[],
): boolean {
  const down = setup.position === "vertical" && setup.progression === "down";
  return (
    (hanging === undefined || (isPositionOut(setup) && !down)) &&
    (downByClass === undefined || (down && madeForDownhill(electrode))) &&
    (joints === undefined || (setup.joint !== null && joints.includes(setup.joint))) &&
    (processes === undefined || (setup.process !== null && processes.includes(setup.process))) &&
    (stretches === undefined ||
      marks.some(({ stretch }) => stretch !== null && stretches.includes(stretch))) &&
    (places === undefined || marks.some(({ place }) => place !== null && places.includes(place)))
  );
}

const symptomPatterns: readonly (readonly [Pattern, SymptomId])[] = [
  ["with-soot", "heavy-soot"],
  ["with-dull-grey-face", "dull-grey-face"],
];

/** Soot or a grey face ticked on a mark is a symptom of the whole bead. */
function patternSymptoms(input: DiagnoseInput): readonly EvidenceItem[] {
  return (
    symptomPatterns
      // A grey crust at the root is not a grey face.
      .filter(([pattern]) =>
        input.findings.some(({ patterns, place }) => place !== "root" && patterns.includes(pattern)),
      )
      .filter(([, symptom]) => input.answers[symptom] === undefined)
      .map(([, symptom]) => ({ ...symptomItem(symptom, true), key: `look:${symptom}`, kind: "look" }))
  );
}

function symptomItem(id: SymptomId, present: boolean): EvidenceItem {
  const symptom = symptoms.find((row) => row.id === id)!;
  const seen = present ? `${symptom.name} was noticed.` : `${symptom.name}: it was not noticed.`;
  return {
    ...blank,
    key: `answer:${id}`,
    kind: "answer",
    present: present ? id : null,
    absent: present ? null : id,
    forText: Object.fromEntries(symptom.links.map(({ cause }) => [cause, seen])),
    againstText: seen,
    sources: sourcesOf(symptom.witnesses),
  };
}

function readingItem(reading: Reading): EvidenceItem {
  return {
    ...blank,
    key: `reading:${reading.key}`,
    kind: "reading",
    odds: reading.odds,
    forText: reading.forText,
    againstText: reading.againstText,
    amounts: reading.amounts,
    sources: [reading.source],
  };
}

/** Unknown ids were refused at the door; "look" questions are answered by marking, not here. */
function answerItems(questionId: string, answerId: string): readonly EvidenceItem[] {
  const symptom = symptoms.find(({ id }) => id === questionId);
  if (symptom) return answerId === "unsure" ? [] : [symptomItem(symptom.id, answerId === "yes")];
  const question = questions.find(({ id }) => id === questionId);
  const answer = question?.answers.find(({ id }) => id === answerId);
  if (!question || !answer) return [];
  const said = `${question.question} ${answer.text}.`;
  return [
    {
      ...blank,
      key: `answer:${questionId}`,
      kind: "answer",
      answer: { causes: question.causes, likelihood: answer.likelihood },
      forText: Object.fromEntries(question.causes.map((cause) => [cause, said])),
      againstText: said,
      sources: sourcesOf([...question.documents, "memory"]),
    },
  ];
}

/** Names for sentences. */
export function imperfectionName(id: ImperfectionId): string {
  return imperfections[id].name;
}
