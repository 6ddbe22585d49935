import type { Metadata } from "next";
import Link from "next/link";
import { ActionButton } from "@/components/course";
import { KindTable, StudyTable } from "@/components/eye";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { listRounds, type RoundRecord } from "@/lib/drill";
import { attributeStudy, ratesByKind, type AttributeStudy } from "@/lib/eye";
import { personIdOf } from "@/lib/people";
import { personNames } from "@/lib/roster";
import { pageFor } from "../../_door/here";
import { startSameAction } from "../actions";
import { levelNames, lookNames } from "../level-names";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "People compared" };

/** People who looked at the same beads, compared with what is on them and with each other. */
export default async function AgreementPage() {
  const now = await pageFor("course.read");
  const rounds = (await listRounds(now.db)).filter(({ finishedAt }) => finishedAt !== null);
  const names = await personNames(now.db);
  const nameOf = ({ personId }: RoundRecord): string =>
    personId === null ? "Owner" : (names.get(personId) ?? "Name removed");
  const keys = [...new Set(rounds.map(({ setKey }) => setKey))].toReversed();
  const sets = keys.map((key) => rounds.filter(({ setKey }) => setKey === key));
  const own = personIdOf(now.actor);
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div>
          <p className={page.trail}>
            <Link href="/eye">Training of the eye</Link>
          </p>
          <h1>People compared</h1>
          <p>Everybody who looked at the same beads, beside what is on them. Only first looks count.</p>
        </div>
        {sets.length === 0 && <p>Nobody has finished a round yet.</p>}
        {sets.map((set) => {
          const [first] = set;
          if (!first) return null;
          const study = studyOf(set, nameOf);
          return (
            <section key={first.setKey} className={page.stack}>
              <h2>
                {lookNames[first.round.look]}, {levelNames[first.round.level]}
              </h2>
              {study && <StudyTable title={`${study.people.length} on the same beads`} study={study} />}
              <KindTable rates={ratesByKind(set.flatMap(({ round }) => round.scored ?? []))} progress={[]} />
              {!set.some(({ personId }) => personId === own) && (
                <ActionButton className={buttonClass()} action={startSameAction.bind(null, first.setKey)}>
                  Look at these beads yourself
                </ActionButton>
              )}
            </section>
          );
        })}
      </main>
    </>
  );
}

/** First looks of each person at the beads that can be judged and were by all; null where none can. */
function studyOf(set: readonly RoundRecord[], nameOf: (round: RoundRecord) => string): AttributeStudy | null {
  const firsts = [...new Map(set.toReversed().map((one) => [one.personId, one])).values()].toReversed();
  const truths = firsts[0]?.round.scored ?? [];
  const judged = truths.filter(
    ({ beadId, fails }) =>
      fails !== null &&
      firsts.every(({ round }) =>
        round.scored?.some((one) => one.beadId === beadId && one.saidFails !== null),
      ),
  );
  if (judged.length === 0) return null;
  return attributeStudy({
    truth: judged.map(({ fails }) => fails === true),
    people: firsts.map((one) => ({
      name: nameOf(one),
      said: judged.map(({ beadId }) => [
        one.round.scored?.find((scored) => scored.beadId === beadId)?.saidFails === true,
      ]),
    })),
  });
}
