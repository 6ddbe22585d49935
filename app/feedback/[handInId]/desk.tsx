import Link from "next/link";
import type { Here } from "@/app/_door/here";
import { ActionButton, FeedbackDesk } from "@/components/course";
import { buttonClass, LocalTime, page } from "@/components/ui";
import { returnedFeedbacks, listHandIns } from "@/lib/classroom";
import { startingSetup } from "@/lib/course";
import { emptyDrawing } from "@/lib/marks";
import { setupRows } from "@/lib/report";
import {
  keepPhraseAction,
  readFeedbackAction,
  returnFeedbackAction,
  saveFeedbackAction,
  withdrawAction,
} from "../actions";
import { Besides } from "./besides";
import { deskRow } from "./desk-row";
import { HandInNames } from "./hand-in-names";
import { LastAttempt } from "./last-attempt";
import type { Found } from "./read-all";

/** The desk of one hand-in, in the row of those that wait. */
export async function Desk({
  now,
  row,
  mayWithdraw,
  ...found
}: Found & { now: Here; row: string | undefined; mayWithdraw: boolean }) {
  const { handIn, bead, exercise, feedback, phrases, group } = found;
  return (
    <main>
      <FeedbackDesk
        key={handIn.id}
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
        row={await deskRow(now, handIn, exercise, row)}
        save={saveFeedbackAction.bind(null, handIn.id)}
        readStored={readFeedbackAction.bind(null, handIn.id)}
        giveBack={returnFeedbackAction.bind(null, handIn.id)}
        keepPhrase={keepPhraseAction}
        head={<Head {...found} mayWithdraw={mayWithdraw} />}
        under={
          <>
            <Said {...found} />
            <LastAttempt {...await attemptBefore(now, found)} />
          </>
        }
        beside={
          <>
            <Besides {...found} withNote={false} />
            <HandInNames handIn={handIn} members={group?.members ?? []} />
          </>
        }
      />
    </main>
  );
}

function Head({ handIn, exercise, mayWithdraw }: Found & { mayWithdraw: boolean }) {
  return (
    <>
      <h1>
        {handIn.student ?? "Name removed"}, attempt {handIn.attempt}
      </h1>
      <p>
        <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>, handed in{" "}
        <LocalTime iso={handIn.handedInAt} />
        {handIn.late && ", late"}
      </p>
      <span className={page.buttons}>
        <Link className={buttonClass()} href="/feedback">
          All waiting
        </Link>
        {mayWithdraw && (
          <ActionButton
            className={buttonClass("danger")}
            sure="Withdraw this hand-in?"
            action={withdrawAction.bind(null, handIn.id)}
          >
            Withdraw
          </ActionButton>
        )}
      </span>
    </>
  );
}

/** What the student said: how they ran it, beside what was asked, and their note. */
function Said({ handIn, bead, exercise, units }: Found) {
  const asked = new Map(
    setupRows(startingSetup(exercise.content), units.preferences).map(({ label, value }) => [label, value]),
  );
  const rows = setupRows(bead.content.setup, units.preferences);
  return (
    <section aria-label="What the student said">
      <h2>The student says</h2>
      {handIn.note && <p className={page.words}>“{handIn.note}”</p>}
      <p>
        {rows.length === 0 && "Nothing was said of how it was run."}
        {rows
          .map(({ label, value }) => {
            const wanted = asked.get(label);
            return `${label} ${value}${wanted !== undefined && wanted !== value ? ` (asked: ${wanted})` : ""}`;
          })
          .join(" · ")}
      </p>
    </section>
  );
}

/** The try before this one of the same student for the same exercise, with how it was answered. */
async function attemptBefore({ db }: Here, { handIn }: Found) {
  const all = await listHandIns(db, { exerciseId: handIn.exerciseId });
  const before = all.find(
    ({ studentKey, attempt }) => studentKey === handIn.studentKey && attempt === handIn.attempt - 1,
  );
  const answers = before ? await returnedFeedbacks(db, [before.id]) : null;
  return { handIn: before ?? null, returned: (before && answers?.get(before.id)) ?? null };
}
