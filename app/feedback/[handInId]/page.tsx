import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import {
  ActionButton,
  BeadFacts,
  CausesBeside,
  FeedbackDesk,
  Reply,
  ReturnedView,
} from "@/components/course";
import { Header } from "@/components/shell";
import { buttonClass, page, Panel } from "@/components/ui";
import { db } from "@/lib/db";
import { emptyDrawing } from "@/lib/marks";
import {
  getBead,
  getExercise,
  getFeedback,
  getHandIn,
  handInThing,
  listPhrases,
  assessContext,
} from "@/lib/record";
import { dayText, sheetDocument, summariseBead } from "@/lib/report";
import {
  readFeedbackAction,
  replyAction,
  returnFeedbackAction,
  saveFeedbackAction,
  withdrawAction,
} from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Feedback" };

export default async function FeedbackPage({ params }: { params: Promise<{ handInId: string }> }) {
  const { handInId } = await params;
  const thing = (await handInThing(db(), handInId)) ?? { personId: null };
  const now = await pageFor("feedback.read", thing);
  const handIn = await getHandIn(now.db, handInId);
  if (!handIn) notFound();
  const [bead, exercise, feedback, phrases, units, context] = await Promise.all([
    getBead(now.db, handIn.beadId),
    getExercise(now.db, handIn.exerciseId),
    getFeedback(now.db, handInId),
    listPhrases(now.db),
    currentUnits(),
    assessContext(now.db),
  ]);
  if (!bead || !exercise) notFound();
  const writes = now.may("feedback.write", thing);
  const { returned, digest, returnedAt } = feedback;
  const sheet = sheetDocument(bead, units.preferences, context);
  const beside = (
    <>
      <BeadFacts summary={summariseBead(bead, units.preferences, context)} href={`/beads/${bead.id}`} />
      <CausesBeside causes={sheet.causes} marked={sheet.marks.length > 0} />
      {handIn.note && (
        <Panel title="The student’s note">
          <p className={page.words}>{handIn.note}</p>
        </Panel>
      )}
    </>
  );
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
                <Link href="/students">Your beads</Link>
              )}
            </p>
            <h1>{handIn.student ?? "Name removed"}</h1>
            <p>
              {exercise.title}, handed in {dayText(handIn.handedInAt)}
              {handIn.late && ", late"}
            </p>
          </div>
          <div className={page.buttons}>
            {writes && (
              <Link className={buttonClass()} href="/feedback">
                All waiting
              </Link>
            )}
            {returned ? (
              <a className={buttonClass()} href={`/feedback/${handIn.id}/feedback.pdf`}>
                PDF
              </a>
            ) : (
              now.may("exercise.hand-in", thing) && (
                <ActionButton
                  className={buttonClass("danger")}
                  sure="Withdraw this hand-in?"
                  action={withdrawAction.bind(null, handIn.id)}
                >
                  Withdraw
                </ActionButton>
              )
            )}
          </div>
        </div>
        {returned && digest && returnedAt ? (
          <>
            <ReturnedView returned={returned} digest={digest} day={dayText(returnedAt)} photoSrc={apiPhoto} />
            <Reply
              reply={feedback.reply}
              day={feedback.repliedAt && dayText(feedback.repliedAt)}
              action={now.may("feedback.reply", thing) && !writes ? replyAction.bind(null, handIn.id) : null}
            />
            {beside}
          </>
        ) : writes ? (
          <FeedbackDesk
            photos={bead.photos.map((photo, i) => ({
              id: photo.id,
              viewUrl: `/api/photos/${photo.sha256}/view`,
              smallUrl: `/api/photos/${photo.sha256}/small`,
              widthPx: photo.widthPx,
              heightPx: photo.heightPx,
              name: `Photo ${i + 1}, ${photo.role}`,
              drawing: bead.content.photos[i]?.drawing ?? emptyDrawing,
            }))}
            draft={feedback.draft}
            revision={feedback.revision}
            rubric={exercise.content.rubric}
            phrases={phrases.map(({ text }) => text)}
            save={saveFeedbackAction.bind(null, handIn.id)}
            readStored={readFeedbackAction.bind(null, handIn.id)}
            giveBack={returnFeedbackAction.bind(null, handIn.id)}
            beside={beside}
          />
        ) : (
          <>
            <p className={page.notice}>Handed in. Your instructor has not returned feedback yet.</p>
            {beside}
          </>
        )}
      </main>
    </>
  );
}

const apiPhoto = (sha256: string) => `/api/photos/${sha256}/small`;
