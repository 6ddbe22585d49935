import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "@/components/course";
import { KindTable } from "@/components/eye";
import { Header } from "@/components/shell";
import { Button, buttonClass, Field, LocalTime, page, Panel } from "@/components/ui";
import { dataDir } from "@/lib/db";
import { drawMore, drawnBeads, listRounds, type RoundRecord } from "@/lib/drill";
import { BEADS_A_ROUND, eyeLevels, eyeLooks, eyeTotals, kindProgress, ratesByKind } from "@/lib/eye";
import { personIdOf } from "@/lib/people";
import { pageFor } from "../_door/here";
import { startRoundAction } from "./actions";
import { levelNames, lookNames } from "./level-names";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Training of the eye" };

/** Rounds of drawn beads to be looked at, and how one's eye gets on. */
export default async function EyePage() {
  const now = await pageFor("bead.create");
  const rounds = await listRounds(now.db, { personId: personIdOf(now.actor) });
  const seen = new Set(rounds.flatMap(({ round }) => round.beadIds));
  const ready = await Promise.all(
    eyeLooks.map(async (look) => {
      const drawn = await drawnBeads(dataDir(), look);
      return { look, count: drawn.length, fresh: drawn.filter((id) => !seen.has(id)).length };
    }),
  );
  const lacking = ready.find(({ fresh }) => fresh < 2 * BEADS_A_ROUND);
  if (lacking) void drawMore(dataDir(), lacking.look);
  const scored = rounds.flatMap(({ round }) => (round.scored ? [round.scored] : []));
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <h1>Training of the eye</h1>
            <p>
              {BEADS_A_ROUND} drawn beads, others each time. Mark and name what is there; what is really on
              them is shown at the end.
            </p>
          </div>
          {now.may("course.read") && (
            <Link className={buttonClass()} href="/eye/agreement">
              People compared
            </Link>
          )}
        </div>
        <Panel title="A new round" tone="straw">
          <StartForm ready={ready} />
        </Panel>
        <Rounds rounds={rounds} />
        {scored.length > 0 && (
          <KindTable rates={ratesByKind(scored.flat())} progress={kindProgress(scored)} />
        )}
        <p className={page.note}>
          The beads are drawn, not photographed. Who is right on them is not qualified to inspect real ones.
        </p>
      </main>
    </>
  );
}

function StartForm({ ready }: { ready: readonly { look: (typeof eyeLooks)[number]; count: number }[] }) {
  const able = ready.some(({ count }) => count >= BEADS_A_ROUND);
  return (
    <ActionForm action={startRoundAction} className={page.fields} label="A new round">
      <Field label="How hard">
        {(ids) => (
          <select {...ids} name="look">
            {ready.map(({ look, count }) => (
              <option key={look} value={look}>
                {lookNames[look]}
                {count < BEADS_A_ROUND && ` (${count} of ${BEADS_A_ROUND} drawn yet)`}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field label="Judged against">
        {(ids) => (
          <select {...ids} name="level" defaultValue="iso-5817-c">
            {eyeLevels.map((level) => (
              <option key={level} value={level}>
                {levelNames[level]}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Button type="submit" tone="main" disabled={!able}>
        Begin
      </Button>
      {!able && <p>The first beads are being drawn now. Reload the page in a minute.</p>}
    </ActionForm>
  );
}

function Rounds({ rounds }: { rounds: readonly RoundRecord[] }) {
  if (rounds.length === 0) return null;
  return (
    <ul className={page.list} aria-label="Your rounds">
      {rounds.toReversed().map(({ id, startedAt, round }) => {
        const totals = round.scored && eyeTotals(round.scored);
        return (
          <li key={id} className={page.item}>
            <Link className={page.link} href={`/eye/${id}`}>
              <LocalTime iso={startedAt} />
            </Link>
            <span className={page.note}>
              {lookNames[round.look]}, {levelNames[round.level]}
            </span>
            <span>
              {totals
                ? `${totals.found} found, ${totals.missed} missed, ${totals.misnamed} named wrongly, ${totals.falseCalls} seen where nothing is, ${totals.missized} sized wrongly`
                : `${round.answers.length} of ${round.beadIds.length} looked at`}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
