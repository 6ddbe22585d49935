"use client";

import Link from "next/link";
import { useEffect, useState, useSyncExternalStore } from "react";
import { Button, later, Panel, useLater } from "@/components/ui";
import { leftBeads, type LeftBead } from "./left-beads";
import { useWho } from "./who";

const nothing: readonly LeftBead[] = [];

/** What reads the device and sends: no page waits for it. */
const leftWork = later(() => import("./left-work"));

/** Sends, on whatever page, what windows that are gone left on this device. Shows nothing. */
export function SendLeftWork() {
  const by = useWho();
  const code = useLater(leftWork);
  useEffect(() => (by === "nobody" ? undefined : code?.sendLeftWork(by)), [by, code]);
  return null;
}

/** Beads of which this device has more than Toeline, with the way to each. */
export function LeftHere() {
  const left = useSyncExternalStore(leftBeads.subscribe, leftBeads.state, () => nothing);
  if (left.length === 0) return null;
  return (
    <Panel title="Kept on this device" tone="straw">
      <p>
        {left.every(({ stuck }) => stuck !== null)
          ? "Not in Toeline, and it does not go there by itself."
          : "Not in Toeline yet; it goes there by itself as soon as Toeline answers."}
      </p>
      <ul>
        {left.map((bead) => (
          <li key={bead.key}>
            <Link href={bead.isNew ? `/beads/new#${bead.beadId}` : `/beads/${bead.beadId}`}>
              {bead.number === null ? "New bead" : `Bead ${bead.number}, ${bead.title}`}
            </Link>{" "}
            ({bead.count} to send)
            {bead.stuck !== null && <Stuck bead={bead} stuck={bead.stuck} />}
          </li>
        ))}
      </ul>
    </Panel>
  );
}

/** Why it does not go by itself, and the way to be rid of it: asked twice, because it is nowhere else. */
function Stuck({ bead, stuck }: { bead: LeftBead; stuck: string }) {
  const by = useWho();
  const [isAsking, setAsking] = useState(false);
  if (!isAsking)
    return (
      <>
        : {stuck} <Button onClick={() => setAsking(true)}>Throw it away</Button>
      </>
    );
  return (
    <>
      : it is nowhere else and cannot be brought back.{" "}
      <Button tone="danger" onClick={() => void leftWork.load().then(({ throwAway }) => throwAway(bead, by))}>
        Throw it away
      </Button>{" "}
      <Button onClick={() => setAsking(false)}>Keep it</Button>
    </>
  );
}
