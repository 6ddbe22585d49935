import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { here } from "@/app/_door/here";
import { ActionButton, BeadFacts, KeepAddress, Reply, ReturnedView } from "@/components/course";
import { LayeredPhoto } from "@/components/layer";
import { Header } from "@/components/shell";
import { buttonClass, LocalTime, page } from "@/components/ui";
import { getBead, type BeadRecord } from "@/lib/beads";
import { emptyDrawing } from "@/lib/marks";
import { getFeedback, handInBySecret } from "@/lib/classroom";
import { assessContext } from "@/lib/shop";
import { assessBead } from "@/lib/assess";
import { summariseBead } from "@/lib/report";
import { replyBySecretAction, seenBySecretAction, withdrawBySecretAction } from "../../actions";

export const dynamic = "force-dynamic";
// The address is the key, so it must not travel on to another site nor into a search engine.
export const metadata: Metadata = { title: "Your hand-in", referrer: "no-referrer", robots: "noindex" };

/** Where a student without an account waits for the answer, reads it and replies. The secret is the permission. */
export default async function SecretPage({ params }: { params: Promise<{ code: string; secret: string }> }) {
  const { code, secret } = await params;
  const { db } = await here();
  const handIn = await handInBySecret(db, code, secret);
  if (!handIn) notFound();
  const [bead, feedback, units, context] = await Promise.all([
    getBead(db, handIn.beadId),
    getFeedback(db, handIn.id),
    currentUnits(),
    assessContext(db),
  ]);
  if (!bead) notFound();
  const own = `/hand-in/${code}/${secret}`;
  const photoSrc = (sha256: string) => `${own}/photo/${sha256}/small`;
  const { returned, digest, returnedAt } = feedback;
  return (
    <>
      <Header />
      <main className={`${page.wide} ${returned ? "" : page.column}`}>
        <div className={page.top}>
          <div>
            <p className={page.note}>
              {handIn.student} · attempt {handIn.attempt}, handed in <LocalTime iso={handIn.handedInAt} />
              {handIn.late && ", late"}
            </p>
            <h1>{handIn.exerciseTitle}</h1>
          </div>
          {returned && (
            <a className={buttonClass()} href={`${own}/feedback.pdf`}>
              Feedback as PDF
            </a>
          )}
        </div>
        {returned && digest && returnedAt ? (
          <>
            <ReturnedView
              {...{ returned, digest, returnedAt, photoSrc }}
              seen={seenBySecretAction.bind(null, code, secret)}
            />
            <Reply
              reply={feedback.reply}
              repliedAt={feedback.repliedAt}
              action={replyBySecretAction.bind(null, code, secret)}
            />
          </>
        ) : (
          <Waits code={code} secret={secret} bead={bead} note={handIn.note} photoSrc={photoSrc} />
        )}
        <div className={page.buttons}>
          <Link className={buttonClass()} href={`/hand-in/${code}`}>
            Hand in the next attempt
          </Link>
        </div>
        <BeadFacts summary={summariseBead(assessBead(bead, context), units.preferences)} />
      </main>
    </>
  );
}

/** Handed in and not answered yet: what was handed in, and the way back. */
function Waits({
  code,
  secret,
  bead,
  note,
  photoSrc,
}: {
  code: string;
  secret: string;
  bead: BeadRecord;
  note: string | null;
  photoSrc: (sha256: string) => string;
}) {
  return (
    <>
      <KeepAddress address={`/hand-in/${code}/${secret}`} />
      {bead.photos.map((photo, i) => (
        <LayeredPhoto
          key={photo.id}
          src={photoSrc(photo.sha256)}
          widthPx={photo.widthPx}
          heightPx={photo.heightPx}
          drawing={bead.content.photos[i]?.drawing ?? emptyDrawing}
          items={[]}
          name={`Photo ${i + 1}, ${photo.role}`}
        />
      ))}
      {note && <p className={page.words}>Your note: {note}</p>}
      <div className={page.buttons}>
        <ActionButton
          className={buttonClass("danger")}
          sure="Take this bead back?"
          action={withdrawBySecretAction.bind(null, code, secret)}
        >
          Withdraw
        </ActionButton>
      </div>
    </>
  );
}
