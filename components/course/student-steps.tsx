import Link from "next/link";
import { VerdictBadge } from "@/components/beads";
import { LocalTime, page } from "@/components/ui";
import type { ProgressBead, ProgressStep } from "@/lib/course";
import { imperfections, type ImperfectionId } from "@/lib/trade";

export interface StudentBead extends ProgressBead {
  readonly number: number;
  readonly title: string;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  /** SHA-256 of its first photo. */
  readonly photo: string | null;
  readonly cause: string | null;
  /** Score of the returned feedback, in words; "" where there is none. */
  readonly scoreWords: string;
  readonly feedback: { readonly handInId: string; readonly returned: boolean } | null;
}

const names = (ids: readonly ImperfectionId[]) =>
  [...new Set(ids)].map((id) => imperfections[id].name).join(", ");

/** Beads in order, each against the last one before it of the same joint, position and wire. */
export function StudentSteps({
  beads,
  steps,
}: {
  beads: readonly StudentBead[];
  steps: readonly ProgressStep[];
}) {
  if (beads.length === 0) return <p>No bead yet.</p>;
  return (
    <ol className={page.list}>
      {beads.map((bead, i) => (
        <li key={bead.beadId} className={page.item}>
          {bead.photo && (
            <img className={page.thumb} src={`/api/photos/${bead.photo}/thumb`} alt="" loading="lazy" />
          )}
          <div style={{ flex: "1 1 320px" }}>
            <h3>
              <Link href={`/beads/${bead.beadId}`}>
                {bead.number} {bead.title}
              </Link>
            </h3>
            <p className={page.note}>
              <LocalTime iso={bead.createdAt} only="day" />
              {steps[i]?.attempt && ` · attempt ${steps[i].attempt}`}
              {bead.cause && ` · first cause: ${bead.cause}`}
            </p>
            <p>
              {bead.imperfections.length === 0
                ? bead.lookedFor.length === 0 && !bead.feedback?.returned
                  ? "Not looked over yet."
                  : "Looked over, nothing found."
                : `Marked: ${names(bead.imperfections)}.`}
            </p>
            <Step step={steps[i]} before={beads.find(({ beadId }) => beadId === steps[i]?.before)} />
          </div>
          {bead.scoreWords && <strong>{bead.scoreWords}</strong>}
          <VerdictBadge verdict={bead.verdict} />
          {bead.feedback && (
            <Link className={page.link} href={`/feedback/${bead.feedback.handInId}`}>
              {bead.feedback.returned ? "Feedback" : "Handed in"}
            </Link>
          )}
        </li>
      ))}
    </ol>
  );
}

function Step({ step, before }: { step: ProgressStep | undefined; before: StudentBead | undefined }) {
  if (!step || !before) return null;
  const lines = [
    { word: "Gone", ids: step.gone, tone: page.good },
    { word: "Still there", ids: step.stayed, tone: page.bad },
    { word: "New", ids: step.fresh, tone: page.bad },
    { word: "Not marked this time, and nobody said they looked", ids: step.notLooked, tone: page.wait },
  ].filter(({ ids }) => ids.length > 0);
  const change = step.scoreChange === null ? 0 : Math.round(step.scoreChange * 100);
  if (lines.length === 0 && step.verdict === null && change === 0) return null;
  return (
    <div>
      <p>
        Against bead {before.number}
        {step.verdict === "better" && ": now meets its criteria"}
        {step.verdict === "worse" && ": met its criteria before, does not now"}
        {change !== 0 && `, score ${change > 0 ? "up" : "down"} by ${Math.abs(change)} points in a hundred`}
      </p>
      <ul>
        {lines.map(({ word, ids, tone }) => (
          <li key={word} className={tone}>
            {word}: {names(ids)}
          </li>
        ))}
      </ul>
    </div>
  );
}
