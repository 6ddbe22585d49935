import type { Change, DiagnoseInput, Diagnosis } from "@/lib/diagnose";
import { factsOf, isPositionOut, windowFor, windowQueryFor, type RunSetup } from "@/lib/setup";
import { feedCap, linesAtFeed, windowLines } from "@/lib/trade";
import { hotter, pullApart } from "@/lib/diagnose/tables/knobs";
import { questions } from "@/lib/diagnose/tables/questions";
import { ask, grid, marksFor, random, runAt } from "./grid";

/** What a sweep found. */
export interface Swept {
  readonly beads: number;
  readonly proposals: number;
  readonly broken: readonly string[];
  /** Largest step of a dial from inside its window, as a share of the reading. */
  readonly worstStep: number;
  /** Largest move of a target when the reading moved by a hundredth, as a share of the reading. */
  readonly worstJump: number;
  /** The bead and the change it was of; empty where nothing moved. */
  readonly worstJumpAt: string;
}

const EPS = 1e-6;
const AT_ONCE = 0.2;
type Dial = "wireFeedMPerMin" | "volts" | "amps";
const dialOf = (change: Change): Dial | null =>
  change.unitKind === "wire-feed"
    ? "wireFeedMPerMin"
    : change.unitKind === "voltage"
      ? "volts"
      : change.unitKind === "current"
        ? "amps"
        : null;

const proposed = ({ firstChange, nextChanges }: Diagnosis): readonly Change[] =>
  firstChange === null ? nextChanges : [firstChange, ...nextChanges];

/**
 * The laws of the one change, over beads of the whole grid:
 * a target stays among what the wire is run at, or comes back towards it; no dial is turned by more than a fifth from
 * inside; a feed stays below what the mains input holds; nothing hotter where the bead melted through or hangs, nothing
 * further from what the plate wants; no two changes undo each other; nothing that is recorded or answered as right.
 * It ends early where enough was found.
 */
export function sweep(
  every: number,
  seed: number,
  answer = ask,
  jumpEvery = 1,
  isEnough: (broken: readonly string[]) => boolean = () => false,
): Swept {
  const chance = random(seed);
  const points = grid();
  const broken: string[] = [];
  let [beads, proposals, worstStep, worstJump, worstJumpAt] = [0, 0, 0, 0, ""];
  for (let i = Math.floor(chance() * every); i < points.length && !isEnough(broken); i += every) {
    const setup = runAt(points[i]!, chance);
    const findings = marksFor(setup, chance);
    const answers = answered(chance);
    const input: Partial<DiagnoseInput> = { setup, findings, answers };
    const diagnosis = answer(input);
    const changes = proposed(diagnosis);
    beads += 1;
    proposals += changes.length;
    const told = (law: string) =>
      broken.push(`${law}: ${JSON.stringify(input)} -> ${JSON.stringify(changes)}`);
    for (const change of changes) {
      const dial = dialOf(change);
      if (dial !== null && change.fromSi !== null && change.toSi !== null) {
        const said = dialLaws(setup, dial, change.fromSi, change.toSi);
        if (said.law !== null) told(said.law);
        worstStep = Math.max(worstStep, said.step);
        // A jump asks for a second answer, so in a long sweep only some beads are tried for one.
        const moved = beads % jumpEvery === 0 ? jump(answer, input, change, dial) : 0;
        if (moved > worstJump) worstJumpAt = `${JSON.stringify(input)} -> ${JSON.stringify(change)}`;
        worstJump = Math.max(worstJump, moved);
      }
      for (const law of changeLaws(setup, findings, answers, change, diagnosis)) told(law);
    }
    if (changes.some((a, n) => changes.slice(n + 1).some((b) => pullApart(a.causeId, b.causeId))))
      told("two changes undo each other");
  }
  return { beads, proposals, broken, worstStep, worstJump, worstJumpAt };
}

function answered(chance: () => number): Record<string, string> {
  if (chance() < 0.6) return {};
  const question = questions[Math.floor(chance() * questions.length)]!;
  return { [question.id]: question.answers[Math.floor(chance() * question.answers.length)]!.id };
}

/** The window laws of one dial. */
function dialLaws(setup: RunSetup, dial: Dial, from: number, to: number) {
  const band = spanOf(setup, dial, from);
  const step = Math.abs(to - from) / from;
  const inside = band === null || (from >= band.low - EPS && from <= band.high + EPS);
  const say = (law: string | null) => ({ law, step: inside ? step : 0 });
  if (inside && step > AT_ONCE + EPS) return say("more than a fifth at once");
  if (band === null) return say(null);
  if (inside && (to < band.low - EPS || to > band.high + EPS)) return say("out of the wire's rows");
  const distance = (x: number) => Math.max(0, band.low - x, x - band.high);
  if (!inside && distance(to) > distance(from) + EPS) return say("further out of the wire's rows");
  const cap = dial === "wireFeedMPerMin" ? capOf(setup) : null;
  if (cap !== null && to > from && to > cap + EPS && from <= cap) return say("more than the input holds");
  return say(null);
}

function capOf({ inputPower, process, electrodeDiameterMm }: RunSetup): number | null {
  if (inputPower === null || process === null || electrodeDiameterMm === null) return null;
  return feedCap(inputPower, process, electrodeDiameterMm)?.maxWireFeedMPerMin ?? null;
}

/** What the documents' rows allow; written apart from the targets. */
function spanOf(setup: RunSetup, dial: Dial, from: number): { low: number; high: number } | null {
  if (dial !== "wireFeedMPerMin") return windowFor(setup)?.[dial] ?? null;
  const query = windowQueryFor(setup);
  if (query === null) return null;
  const covering = linesAtFeed(query, from).map(({ line }) => line);
  const spans = (covering.length > 0 ? covering : windowLines(query)).map(({ feedMPerMin }) => feedMPerMin);
  if (spans.length === 0) return null;
  return { low: Math.min(...spans.map(([low]) => low)), high: Math.max(...spans.map(([, high]) => high)) };
}

const MELTED: readonly string[] = ["burn-through", "excess-penetration", "sagging"];
const HANGS: readonly string[] = ["convex-bead", "overlap", "sagging", "undercut"];

function changeLaws(
  setup: RunSetup,
  findings: DiagnoseInput["findings"],
  answers: Readonly<Record<string, string>>,
  change: Change,
  diagnosis: Diagnosis,
): readonly string[] {
  const facts = factsOf(setup);
  const fault = (code: string) => facts.some((fact) => fact.code === code && fact.severity !== null);
  const recorded = diagnosis.contradictions.some(({ causeId }) => causeId === change.causeId);
  const asked = questions.find(
    ({ id, causes }) => answers[id] !== undefined && causes.includes(change.causeId),
  );
  const answer = asked?.answers.find(({ id }) => id === answers[asked.id]);
  const ratio = answer
    ? answer.likelihood[asked!.causes.indexOf(change.causeId) + 1]! / answer.likelihood[0]!
    : 1;
  const known = recorded || ratio >= 4;
  const has = (ids: readonly string[]) => findings.some(({ imperfection }) => ids.includes(imperfection));
  const laws: string[] = [];
  if (ratio <= 0.25 && !recorded) laws.push("answered as right, proposed all the same");
  if (hotter.includes(change.causeId) && has(MELTED) && !known) laws.push("hotter, where it melted through");
  const down = setup.progression === "down" && setup.position === "vertical";
  const low = facts.some(
    (fact) =>
      fact.severity !== null && /below|low-for-feed/.test(fact.code) && fact.code !== "plate-below-floor",
  );
  if (
    hotter.includes(change.causeId) &&
    isPositionOut(setup) &&
    !down &&
    findings.every(({ imperfection, stretch }) => HANGS.includes(imperfection) && stretch !== "restart") &&
    setup.process !== "GTAW" &&
    !low &&
    !known &&
    !(change.causeId === "ctwd-long" && fault("reading-above-window"))
  )
    laws.push("hotter, where the pool hangs");
  const out = (side: string) =>
    facts.some(
      ({ code, severity, data }) =>
        severity !== null && code === `reading-${side}-window` && /Feed|amps/.test(String(data["field"])),
    );
  if (change.causeId === "wfs-low" && fault("current-above-plate") && !out("below") && !known)
    laws.push("more, where the plate has too much");
  if (
    change.causeId === "wfs-high" &&
    fault("current-below-plate") &&
    !isPositionOut(setup) &&
    !out("above") &&
    !known
  )
    laws.push("less, where the plate has too little");
  return laws;
}

/** How far the target of the same change moves when its reading moves by a hundredth. */
function jump(answer: typeof ask, input: Partial<DiagnoseInput>, change: Change, dial: Dial): number {
  const from = change.fromSi!;
  const setup = { ...input.setup!, [dial]: from * 1.01 };
  const same = proposed(answer({ ...input, setup })).find(({ causeId }) => causeId === change.causeId);
  if (!same || same.toSi === null || same.fromSi === null || change.toSi === null) return 0;
  return Math.abs(same.toSi - change.toSi) / from;
}
