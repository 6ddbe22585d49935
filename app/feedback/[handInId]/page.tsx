import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { pageFor, type Here } from "@/app/_door/here";
import { ActionButton, Reply, ReturnedView } from "@/components/course";
import { Header } from "@/components/shell";
import { buttonClass, LocalTime, page } from "@/components/ui";
import { db } from "@/lib/db";
import { handInThing } from "@/lib/classroom";
import { personIdOf, type Thing } from "@/lib/people";
import { replyAction, seenAction, withdrawAction } from "../actions";
import { Besides } from "./besides";
import { Desk } from "./desk";
import { HandInNames } from "./hand-in-names";
import { readAll, type Found } from "./read-all";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Feedback" };

const isOwn = ({ actor }: Here, { personId }: Thing): boolean =>
  personId !== null && personId === personIdOf(actor);

interface Props {
  params: Promise<{ handInId: string }>;
  /** Among which of those that wait previous and next lead: "exercise", "group"; otherwise all. */
  searchParams: Promise<{ row?: string }>;
}

export default async function FeedbackPage({ params, searchParams }: Props) {
  const { handInId } = await params;
  const { row } = await searchParams;
  const thing = (await handInThing(db(), handInId)) ?? { personId: null };
  const now = await pageFor("feedback.read", thing);
  const found = await readAll(now, handInId);
  if (!found) notFound();
  // A bead of one's own is looked at as its student, whatever else one may: somebody else answers it.
  const writes = now.may("feedback.write", thing) && !isOwn(now, thing);
  if (writes && !found.feedback.returned)
    return (
      <>
        <Header />
        <Desk {...found} now={now} row={row} mayWithdraw={now.may("exercise.hand-in", thing)} />
      </>
    );
  return (
    <Answered
      {...found}
      writes={writes}
      teaches={now.may("feedback.write", thing)}
      mayWithdraw={now.may("exercise.hand-in", thing)}
      mayReply={now.may("feedback.reply", thing) && !writes}
    />
  );
}

/** What was returned, or for the student that it is still waited for. */
function Answered({
  writes,
  teaches,
  mayWithdraw,
  mayReply,
  ...found
}: Found & { writes: boolean; teaches: boolean; mayWithdraw: boolean; mayReply: boolean }) {
  const { handIn, exercise, feedback, group } = found;
  const { returned, digest, returnedAt } = feedback;
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <p className={page.trail}>
              {writes ? (
                <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>
              ) : (
                <Link href={handIn.personId ? `/students/${handIn.personId}` : "/students"}>
                  Your exercises
                </Link>
              )}
            </p>
            <h1>{handIn.student ?? "Name removed"}</h1>
            <p>
              {exercise.title}, attempt {handIn.attempt}, handed in <LocalTime iso={handIn.handedInAt} />
              {handIn.late && ", late"}
            </p>
          </div>
          <div className={page.buttons}>
            {writes && (
              <Link className={buttonClass()} href="/feedback">
                All waiting
              </Link>
            )}
            {returned && (
              <a className={buttonClass()} href={`/feedback/${handIn.id}/feedback.pdf`}>
                PDF
              </a>
            )}
            {!returned && mayWithdraw && (
              <ActionButton
                className={buttonClass("danger")}
                sure="Withdraw this hand-in?"
                action={withdrawAction.bind(null, handIn.id)}
              >
                Withdraw
              </ActionButton>
            )}
          </div>
        </div>
        {returned && digest && returnedAt ? (
          <>
            <ReturnedView
              returned={returned}
              digest={digest}
              returnedAt={returnedAt}
              photoSrc={(sha256) => `/api/photos/${sha256}/small`}
              seen={mayReply ? seenAction.bind(null, handIn.id) : null}
            />
            <Reply
              reply={feedback.reply}
              repliedAt={feedback.repliedAt}
              action={mayReply ? replyAction.bind(null, handIn.id) : null}
            />
          </>
        ) : (
          <p className={page.notice}>
            {teaches
              ? "Handed in. This bead is your own: feedback on it is another instructor’s to give."
              : "Handed in. Your instructor has not returned feedback yet."}
          </p>
        )}
        <Besides {...found} />
        {writes && <HandInNames handIn={handIn} members={group?.members ?? []} />}
      </main>
    </>
  );
}
