import Link from "next/link";
import { isPlanned } from "@/lib/assess";
import { getBeads } from "@/lib/beads";
import { countWaiting } from "@/lib/classroom";
import { openChanges } from "@/lib/find";
import { newestOpen } from "@/lib/jobs";
import { personIdOf } from "@/lib/people";
import { ownOnly, type Here } from "./_door/here";
import styles from "./waiting.module.css";

/** No more of a kind than these: it is a reminder, not a second list. */
const MOST = 3;

interface Item {
  readonly href: string;
  readonly what: string;
  readonly ask: string;
}

/** What waits for whoever is here: changes to be run or judged, hand-ins to be answered, inspections to be signed. */
export async function Waiting({ now }: { now: Here }) {
  const [changes, handIns, inspections] = await Promise.all([
    openOnes(now),
    now.may("feedback.write") ? unanswered(now) : [],
    now.may("job.write") ? unsigned(now) : [],
  ]);
  const items = [...handIns, ...inspections, ...changes];
  if (items.length === 0) return null;
  return (
    <ul className={styles.waiting} aria-label="Waiting for you">
      {items.map(({ href, what, ask }) => (
        <li key={href}>
          <Link href={href}>
            <strong>{what}</strong> {ask}
          </Link>
        </li>
      ))}
    </ul>
  );
}

async function openOnes({ db, actor }: Here): Promise<readonly Item[]> {
  const found = await openChanges(db, ownOnly(actor), MOST);
  const beads = await getBeads(
    db,
    found.map(({ id }) => id),
  );
  return beads.map(({ id, number, content }) => {
    const sentence = content.judgement.tried?.sentence ?? "";
    const ask = isPlanned(content) ? `Run it: ${sentence}` : `${sentence} What did it do?`;
    return { href: `/beads/${id}`, what: `Bead ${number}`, ask };
  });
}

async function unanswered({ db, actor }: Here): Promise<readonly Item[]> {
  const count = await countWaiting(db, personIdOf(actor));
  if (count === 0) return [];
  const what = count === 1 ? "1 bead handed in" : `${count} beads handed in`;
  return [{ href: "/feedback", what, ask: "waits for your feedback" }];
}

async function unsigned({ db }: Here): Promise<readonly Item[]> {
  return (await newestOpen(db, MOST)).map(({ id, number, welds, unseen }) => ({
    href: `/inspections/${id}`,
    what: `Inspection ${number}`,
    ask: unseen === 0 ? "is not signed" : `has ${unseen} of ${welds} welds still to be looked at`,
  }));
}
