import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import styles from "@/components/course/paper.module.css";
import { QrCode } from "@/components/course";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { startingSetup } from "@/lib/course";
import { getExercise } from "@/lib/record";
import { dayText, setupRows } from "@/lib/report";
import { handInAddress } from "../../hand-in-address";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Bench notice" };

export default async function NoticePage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const now = await pageFor("course.read");
  const exercise = await getExercise(now.db, (await params).exerciseId);
  if (!exercise) notFound();
  const [{ address }, units] = await Promise.all([handInAddress(exercise.code), currentUnits()]);
  return (
    <>
      <Header>
        <Link href={`/exercises/${exercise.id}`}>Back to the exercise</Link>
        <PrintButton />
      </Header>
      <article className={styles.paper}>
        <p className={styles.kicker}>{exercise.group.name}</p>
        <h1>{exercise.title}</h1>
        {exercise.content.aim && <p className={styles.aim}>{exercise.content.aim}</p>}
        <dl className={styles.facts}>
          {setupRows(startingSetup(exercise.content), units.preferences).map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        <div className={styles.handIn}>
          <QrCode address={address} side={260} label={`Hand-in address ${address}`} />
          <div>
            <h2>Hand in your bead</h2>
            <ol>
              <li>Chip the slag, brush, let it cool. Glasses stay on.</li>
              <li>Point the phone’s camera at the code.</li>
              <li>Photograph the bead straight from above, with a rule beside it.</li>
            </ol>
            <p className={styles.code}>{exercise.code}</p>
            <p className={styles.address}>{address}</p>
            {exercise.dueAt && <p>Due {dayText(exercise.dueAt)}</p>}
          </div>
        </div>
        <p className={styles.foot}>
          The set-up is a starting point: the wire’s own data sheet and the qualified procedure govern.
        </p>
      </article>
    </>
  );
}
