"use client";

import { Ruler, Undo2 } from "lucide-react";
import Link from "next/link";
import { useRouter } from "next/navigation";
import { useCallback, useState } from "react";
import { SavedSetups, SetupForm } from "@/components/setup";
import { Button, buttonClass, Panel } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { askOfSetup, planQuery } from "@/lib/plan";
import type { RunSetup } from "@/lib/setup";
import type { BenchProps } from "./shared";

export interface SavedSetup {
  readonly id: string;
  readonly name: string;
  readonly setup: RunSetup;
  /** The person's own; false: the shop's. */
  readonly own: boolean;
  /** What it was before it was saved over, the newest first; `until`: ISO 8601. */
  readonly earlier: readonly { readonly setup: RunSetup; readonly until: string }[];
}

export interface SetupStore {
  readonly save: (name: string, setup: RunSetup) => Promise<Answer<unknown>>;
  readonly remove: (id: string) => Promise<Answer<unknown>>;
}

/** How the bead was run, with the set-ups saved under a name and the last one offered. */
export function SetupSection({
  state,
  dispatch,
  assessment,
  units,
  planned,
  saved,
  last,
  store,
}: BenchProps & {
  /** The bead is still to be run with this set-up. */
  planned: boolean;
  saved: readonly SavedSetup[];
  last: RunSetup | null;
  store: SetupStore;
}) {
  const router = useRouter();
  const apply = useCallback((setup: RunSetup) => dispatch({ type: "setup", setup }), [dispatch]);
  const { wanted, ask, settle } = useReplacing(planned, apply);
  return (
    <div style={{ display: "grid", gap: "var(--space-4)" }}>
      {wanted && <Replacing onSettle={settle} />}
      <SavedSetups
        saved={saved}
        last={last}
        onApply={ask}
        onSave={async (name) => {
          const answer = await store.save(name, state.setup);
          router.refresh();
          return answer;
        }}
        onDelete={async (id) => {
          const answer = await store.remove(id);
          router.refresh();
          return answer;
        }}
      />
      {isOpen(state.setup) && (
        <Link href={`/plan?${planQuery(askOfSetup(state.setup))}`} className={buttonClass()}>
          <Ruler size={20} aria-hidden="true" /> Start from a plan
        </Link>
      )}
      {state.setupsBefore.length > 0 && (
        <Button onClick={() => dispatch({ type: "setup.undo" })}>
          <Undo2 size={20} aria-hidden="true" /> Undo the last change of the set-up
        </Button>
      )}
      <SetupForm setup={state.setup} onChange={apply} units={units} findings={assessment.setup} />
    </div>
  );
}

/** Nothing of the machine is said yet. */
const isOpen = ({ wireFeedMPerMin, volts, amps }: RunSetup): boolean =>
  wireFeedMPerMin === null && volts === null && amps === null;

/** A whole set-up goes over a planned one only when the person says so. */
function useReplacing(planned: boolean, apply: (setup: RunSetup) => void) {
  const [wanted, setWanted] = useState<RunSetup | null>(null);
  return {
    wanted,
    /** Whether it was applied at once. */
    ask: (setup: RunSetup): boolean => {
      if (planned) setWanted(setup);
      else apply(setup);
      return !planned;
    },
    settle: (replace: boolean) => {
      if (replace && wanted) apply(wanted);
      setWanted(null);
    },
  };
}

function Replacing({ onSettle }: { onSettle: (replace: boolean) => void }) {
  return (
    <Panel tone="danger" title="This bead has a planned set-up">
      <p role="alert">Your change is in it. Replace the whole set-up, your change included?</p>
      <div style={{ display: "flex", flexWrap: "wrap", gap: "var(--space-2)" }}>
        <Button tone="main" onClick={() => onSettle(false)}>
          Keep the planned one
        </Button>
        <Button onClick={() => onSettle(true)}>Replace it</Button>
      </div>
    </Panel>
  );
}
