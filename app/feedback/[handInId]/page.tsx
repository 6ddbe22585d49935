import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor, type Here } from "@/app/_door/here";
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
import { assessBead } from "@/lib/assess";
import { db } from "@/lib/db";
import { emptyDrawing } from "@/lib/marks";
import { getBead } from "@/lib/beads";
import { getExercise, getFeedback, getHandIn, handInThing, listPhrases } from "@/lib/classroom";
import { assessContext } from "@/lib/shop";
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
  const found = await readAll(now, handInId);
  if (!found) notFound();
  const { handIn, exercise, feedback } = found;
  const writes = now.may("feedback.write", thing);
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
                <Link href="/students">Your beads</Link>
              )}
            </p>
            <h1>{handIn.student ?? "Name removed"}</h1>
            <p>
              {exercise.title}, handed in {dayText(handIn.handedInAt)}
              {handIn.late && ", late"}
            </p>
          </div>
          <Deeds {...found} writes={writes} mayWithdraw={now.may("exercise.hand-in", thing)} />
        </div>
        {returned && digest && returnedAt ? (
          <>
            <ReturnedView returned={returned} digest={digest} day={dayText(returnedAt)} photoSrc={apiPhoto} />
            <Reply
              reply={feedback.reply}
              day={feedback.repliedAt && dayText(feedback.repliedAt)}
              action={now.may("feedback.reply", thing) && !writes ? replyAction.bind(null, handIn.id) : null}
            />
            <Besides {...found} />
          </>
        ) : writes ? (
          <Desk {...found} />
        ) : (
          <>
            <p className={page.notice}>Handed in. Your instructor has not returned feedback yet.</p>
            <Besides {...found} />
          </>
        )}
      </main>
    </>
  );
}

/** The hand-in with all that stands beside it; null where it, its bead or its exercise is gone. */
async function readAll({ db }: Here, handInId: string) {
  const handIn = await getHandIn(db, handInId);
  if (!handIn) return null;
  const [bead, exercise, feedback, phrases, units, context] = await Promise.all([
    getBead(db, handIn.beadId),
    getExercise(db, handIn.exerciseId),
    getFeedback(db, handInId),
    listPhrases(db),
    currentUnits(),
    assessContext(db),
  ]);
  return bead && exercise && { handIn, bead, exercise, feedback, phrases, units, context };
}

type Found = NonNullable<Awaited<ReturnType<typeof readAll>>>;

/** What can be done with the hand-in as a whole. */
function Deeds({ handIn, feedback, writes, mayWithdraw }: Found & { writes: boolean; mayWithdraw: boolean }) {
  return (
    <div className={page.buttons}>
      {writes && (
        <Link className={buttonClass()} href="/feedback">
          All waiting
        </Link>
      )}
      {feedback.returned ? (
        <a className={buttonClass()} href={`/feedback/${handIn.id}/feedback.pdf`}>
          PDF
        </a>
      ) : (
        mayWithdraw && (
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
  );
}

/** What Toeline and the student say. */
function Besides({ handIn, bead, units, context }: Found) {
  const assessed = assessBead(bead, context);
  const sheet = sheetDocument(assessed, units.preferences);
  return (
    <>
      <BeadFacts summary={summariseBead(assessed, units.preferences)} href={`/beads/${bead.id}`} />
      <CausesBeside causes={sheet.causes} marked={sheet.marks.length > 0} />
      {handIn.note && (
        <Panel title="The student’s note">
          <p className={page.words}>{handIn.note}</p>
        </Panel>
      )}
    </>
  );
}

function Desk(found: Found) {
  const { handIn, bead, exercise, feedback, phrases } = found;
  return (
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
      beside={<Besides {...found} />}
    />
  );
}

const apiPhoto = (sha256: string) => `/api/photos/${sha256}/small`;
