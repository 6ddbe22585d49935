import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { EyeLooking, EyeResult } from "@/components/eye";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { dataDir } from "@/lib/db";
import { getRound, readDrawn, type RoundRecord } from "@/lib/drill";
import { eyeTotals, nextBeadId } from "@/lib/eye";
import { personIdOf } from "@/lib/people";
import { currentUnits } from "../../_door/current-units";
import { pageFor } from "../../_door/here";
import { answerBeadAction } from "../actions";
import { levelNames } from "../level-names";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Training of the eye" };

/** One bead after the other, then all of them with what is on them. Until then nothing of that leaves the server. */
export default async function EyeRoundPage({ params }: { params: Promise<{ roundId: string }> }) {
  const { roundId } = await params;
  const now = await pageFor("bead.create");
  const found = await getRound(now.db, roundId);
  const own = found?.personId === personIdOf(now.actor);
  if (!found || !(own || now.may("course.read"))) notFound();
  const beadId = nextBeadId(found.round);
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div>
          <p className={page.trail}>
            <Link href="/eye">Training of the eye</Link>
          </p>
          <h1>
            {beadId === null
              ? "How you saw them"
              : `Bead ${found.round.answers.length + 1} of ${found.round.beadIds.length}`}
          </h1>
        </div>
        {beadId === null ? (
          <Seen found={found} />
        ) : own ? (
          <Look found={found} beadId={beadId} />
        ) : (
          <p>Not finished.</p>
        )}
      </main>
    </>
  );
}

async function Look({ found, beadId }: { found: RoundRecord; beadId: string }) {
  const [bead] = await readDrawn(dataDir(), [beadId]);
  if (!bead)
    return (
      <p className={page.notice}>
        The picture of this bead is gone, so this round cannot go on.{" "}
        <Link className={buttonClass()} href="/eye">
          Begin another one
        </Link>
      </p>
    );
  const { id, widthPx, heightPx } = bead;
  return (
    <EyeLooking
      key={id}
      bead={{ id, widthPx, heightPx }}
      levelName={levelNames[found.round.level]}
      units={(await currentUnits()).preferences}
      answer={answerBeadAction.bind(null, found.id)}
    />
  );
}

async function Seen({ found: { round } }: { found: RoundRecord }) {
  const beads = await readDrawn(dataDir(), round.beadIds);
  const { preferences: units } = await currentUnits();
  const { found, missed, misnamed, falseCalls, missized } = eyeTotals(round.scored ?? []);
  return (
    <>
      <p className={page.sum}>
        {found} found, {missed} missed, {misnamed} named wrongly, {falseCalls} seen where nothing is,{" "}
        {missized} sized wrongly.
      </p>
      <div className={page.columns}>
        {(round.scored ?? []).map((scored, i) => (
          <EyeResult
            key={scored.beadId}
            number={i + 1}
            bead={beads.find(({ id }) => id === scored.beadId) ?? null}
            marks={round.answers.find(({ beadId }) => beadId === scored.beadId)?.marks ?? []}
            scored={scored}
            levelName={levelNames[round.level]}
            units={units}
          />
        ))}
      </div>
    </>
  );
}
