import Link from "next/link";
import { isPlanned } from "@/lib/assess";
import { getBeads } from "@/lib/beads";
import { countWaiting } from "@/lib/classroom";
import { openChanges } from "@/lib/find";
import { listInspections } from "@/lib/jobs";
import { ownOnly, type Here } from "./_door/here";
import styles from "./waiting.module.css";

/** No more of a kind than these: it is a reminder, not a second list. */
const MOST = 3;

interface Item {
  readonly href: string;
  readonly what: string;
  readonly todo: string;
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
      {items.map(({ href, what, todo }) => (
        <li key={href}>
          <Link href={href}>
            <strong>{what}</strong> {todo}
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
    const todo = isPlanned(content) ? `Run it: ${sentence}` : `${sentence} What did it do?`;
    return { href: `/beads/${id}`, what: `Bead ${number}`, todo };
  });
}

async function unanswered({ db }: Here): Promise<readonly Item[]> {
  const count = await countWaiting(db);
  if (count === 0) return [];
  const what = count === 1 ? "1 bead handed in" : `${count} beads handed in`;
  return [{ href: "/feedback", what, todo: "waits for your feedback" }];
}

async function unsigned({ db }: Here): Promise<readonly Item[]> {
  const open = (await listInspections(db)).filter(({ draft }) => draft.open);
  return open.slice(0, MOST).map(({ id, number }) => ({
    href: `/inspections/${id}`,
    what: `Inspection ${number}`,
    todo: "is not signed",
  }));
}
