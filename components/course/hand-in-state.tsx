import Link from "next/link";
import { VerdictBadge, type VerdictWord } from "@/components/beads";
import { LocalTime, page } from "@/components/ui";

export interface ShownHandIn {
  readonly id: string;
  readonly student: string | null;
  readonly exerciseTitle: string;
  readonly late: boolean;
  readonly attempt: number;
  /** ISO 8601, UTC. */
  readonly handedInAt: string;
  readonly feedback: {
    readonly returnedAt: string | null;
    readonly repliedAt: string | null;
    readonly seenAt: string | null;
  } | null;
}

const stateOf = ({ feedback }: ShownHandIn) => {
  if (feedback?.repliedAt) return { word: "replied", tone: page.good };
  if (feedback?.seenAt) return { word: "seen", tone: page.good };
  if (feedback?.returnedAt) return { word: "returned", tone: page.good };
  return feedback ? { word: "draft", tone: page.wait } : { word: "waiting", tone: page.wait };
};

/** One hand-in in a list: whose, when, and how far its answer is. */
export function HandInState({
  handIn,
  verdict,
  score = "",
  withExercise = false,
}: {
  handIn: ShownHandIn;
  verdict: VerdictWord | null;
  /** Of the returned feedback, in words. */
  score?: string;
  withExercise?: boolean;
}) {
  const { word, tone } = stateOf(handIn);
  return (
    <li className={page.item}>
      <Link className={page.link} href={`/feedback/${handIn.id}`}>
        {handIn.student ?? "Name removed"}
        {withExercise && `, ${handIn.exerciseTitle}`}
      </Link>
      <span className={page.note}>
        <LocalTime iso={handIn.handedInAt} />
        {handIn.attempt > 1 && ` · attempt ${handIn.attempt}`}
        {handIn.late && " · late"}
      </span>
      {score && <strong>{score}</strong>}
      <span className={`${page.tag} ${tone}`}>{word}</span>
      {verdict && <VerdictBadge verdict={verdict} />}
    </li>
  );
}
