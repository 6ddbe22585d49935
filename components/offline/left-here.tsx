"use client";

import Link from "next/link";
import { useEffect, useSyncExternalStore } from "react";
import { Panel } from "@/components/ui";
import { leftWork, sendLeftWork, type LeftBead } from "./left-work";
import { useWho } from "./who";

const nothing: readonly LeftBead[] = [];

/** Sends, on whatever page, what windows that are gone left on this device. Shows nothing. */
export function SendLeftWork() {
  const by = useWho();
  useEffect(() => (by === "nobody" ? undefined : sendLeftWork(by)), [by]);
  return null;
}

/** Beads of which this device has more than Toeline, with the way to each. */
export function LeftHere() {
  const left = useSyncExternalStore(leftWork.subscribe, leftWork.state, () => nothing);
  if (left.length === 0) return null;
  return (
    <Panel title="Kept on this device" tone="straw">
      <p>Not in Toeline yet; it goes there by itself as soon as Toeline answers.</p>
      <ul>
        {left.map((bead) => (
          <li key={bead.beadId}>
            <Link href={bead.isNew ? `/beads/new#${bead.beadId}` : `/beads/${bead.beadId}`}>
              {bead.number === null ? "New bead" : `Bead ${bead.number}, ${bead.title}`}
            </Link>{" "}
            ({bead.count} to send){bead.stuck && `: ${bead.stuck} Open it.`}
          </li>
        ))}
      </ul>
    </Panel>
  );
}
