"use client";

import type { Dispatch } from "react";
import { readBead, type StoredBead } from "@/components/offline";
import { CollisionNotice, isAway, refusalOf, type Revision, type Saved } from "@/components/saving";
import { mergeContent, type BeadContent, type PhotoFacts } from "@/lib/assess";
import { startWork, type WorkAction } from "./work-state";

export type Saving = Revision<Saved>;

/** Two windows saved the same bead: the person keeps either or both. */
export function BenchCollision({
  beadId,
  content,
  waiting,
  save,
  keeps,
  dispatch,
}: {
  beadId: string;
  content: BeadContent;
  /** Photos that only this device has: they stay, whichever version is chosen. */
  waiting: readonly PhotoFacts[];
  save: Saving;
  /** What waits for Toeline lies on this device: nobody has to do anything about it. */
  keeps: boolean;
  dispatch: Dispatch<WorkAction>;
}) {
  const replace = (next: BeadContent, { photos }: StoredBead) =>
    dispatch({ type: "replace", state: startWork(next, [...photos, ...notAmong(photos, waiting)]) });
  const refusal = refusalOf(save.state);
  const goesOutByItself = keeps && refusal !== null && isAway(refusal);
  return (
    <CollisionNotice
      state={save.state}
      readStored={() => readBead(beadId)}
      {...(goesOutByItself ? {} : { onRetry: () => void save.flush() })}
      choices={[
        {
          label: "Keep both: all marks of both, my settings",
          choose: (stored) => {
            replace(mergeContent(content, stored.content), stored);
            save.keepOwn(stored);
          },
        },
        {
          label: "Keep mine",
          choose: (stored) => {
            replace(content, stored);
            save.keepOwn(stored);
          },
        },
        {
          label: "Take the other one",
          choose: (stored) => {
            replace(stored.content, stored);
            save.takeStored(stored);
          },
        },
      ]}
    />
  );
}

const notAmong = (some: readonly PhotoFacts[], others: readonly PhotoFacts[]): readonly PhotoFacts[] =>
  others.filter(({ id }) => !some.some((one) => one.id === id));
