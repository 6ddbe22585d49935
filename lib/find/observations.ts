import { assessBead, type AssessContext, type Assessed, type Outcome } from "@/lib/assess";
import type { BeadRecord } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { imperfections, type ImperfectionId, type Joint, type Position, type Process } from "@/lib/trade";

type VerdictWord = "accept" | "reject" | "cannot-say";

/** A stored bead with what lists and trends ask of it. It fits the `BeadObservation` of lib/trends. */
export interface ObservedBead {
  readonly beadId: string;
  /** Calendar day in UTC. */
  readonly day: string;
  /** Identification or name of the person; where none is kept, what stands on the sheet. */
  readonly welder: string | null;
  readonly process: Process | null;
  readonly electrodeClass: string | null;
  readonly joint: Joint | null;
  readonly position: Position | null;
  readonly imperfections: readonly ImperfectionId[];
  /** Worked out when it is first asked for: judging is the dear part. */
  readonly verdict: VerdictWord | null;
  readonly confirmedCause: string | null;
  readonly outcome: Outcome | null;
  /** Lower case: everything written about the bead that words can be looked for in. */
  readonly words: string;
  readonly bead: BeadRecord;
  /** Worked out when it is first asked for, and once. */
  readonly assessed: Assessed<BeadRecord>;
}

/** Reads of one bead at one revision never change, so a verdict is worked out once per revision and process. */
const verdicts = new Map<string, VerdictWord>();
const MOST_KEPT = 20_000;

function verdictOf(bead: BeadRecord, assessed: () => Assessed<BeadRecord>): VerdictWord | null {
  if (bead.content.judgement.criteriaId === null) return null;
  const key = [bead.id, bead.revision, bead.updatedAt, ...bead.photos.map(({ id }) => id)].join(" ");
  const known = verdicts.get(key);
  if (known !== undefined) return known;
  const { verdict } = assessed().assessment;
  // Limits that are not here yet may arrive with an archive, so having none is not kept.
  if (!verdict?.ok) return null;
  const word = verdict.value.verdict;
  if (verdicts.size >= MOST_KEPT) verdicts.clear();
  verdicts.set(key, word);
  return word;
}

/** Cause by bead: the bead a change was tried after has the cause when the bead with the change was cured. */
export function confirmedCauses(beads: readonly BeadRecord[]): ReadonlyMap<string, string> {
  const causes = new Map<string, string>();
  // Newest first: an older try's answer stands.
  for (const { previous, content } of beads) {
    const { tried, outcome } = content.judgement;
    if (previous && tried && outcome === "cured") causes.set(previous.id, tried.causeId);
  }
  return causes;
}

/** Words by which people are known, by person id. */
async function labelsOf(db: Db): Promise<ReadonlyMap<string, string>> {
  const rows = await db.person.findMany({ select: { id: true, name: true, mark: true } });
  return new Map(
    rows.flatMap(({ id, name, mark }) => {
      const label = mark ?? name;
      return label === null ? [] : [[id, label] as const];
    }),
  );
}

function wordsOf({ number, content }: BeadRecord, welder: string | null): string {
  const { title, setup, judgement, photos } = content;
  const marks = photos.flatMap(({ drawing }) => drawing.marks);
  return [
    `#${number}`,
    title,
    welder,
    content.welder,
    judgement.note,
    judgement.criteriaId,
    judgement.tried?.sentence,
    judgement.tried?.causeId,
    ...Object.values(setup).filter((value) => typeof value === "string"),
    ...judgement.readings.map(({ instrument }) => instrument),
    ...marks.flatMap(({ imperfection, note }) => [imperfections[imperfection].name, note]),
  ]
    .filter(Boolean)
    .join("\n")
    .normalize("NFKC")
    .toLowerCase();
}

function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => (kept ??= { value: work() }).value;
}

/** Every bead of a list as an observation, in its order. `all` is what causes are confirmed from. */
export async function observeBeads(
  db: Db,
  beads: readonly BeadRecord[],
  context: AssessContext,
): Promise<readonly ObservedBead[]> {
  const [labels, causes] = [await labelsOf(db), confirmedCauses(beads)];
  return beads.map((bead): ObservedBead => {
    const assessed = once(() => assessBead(bead, context));
    const { setup, judgement, photos } = bead.content;
    const welder = (bead.welderId && labels.get(bead.welderId)) || bead.content.welder;
    return {
      beadId: bead.id,
      day: bead.createdAt.slice(0, 10),
      welder,
      process: setup.process,
      electrodeClass: setup.electrodeClass,
      joint: setup.joint,
      position: setup.position,
      imperfections: photos.flatMap(({ drawing }) => drawing.marks.map((mark) => mark.imperfection)),
      get verdict() {
        return verdictOf(bead, assessed);
      },
      confirmedCause: causes.get(bead.id) ?? null,
      outcome: judgement.outcome,
      words: wordsOf(bead, welder),
      bead,
      get assessed() {
        return assessed();
      },
    };
  });
}
