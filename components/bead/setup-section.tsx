"use client";

import { Undo2 } from "lucide-react";
import { useRouter } from "next/navigation";
import { SavedSetups, SetupForm } from "@/components/setup";
import { Button } from "@/components/ui";
import type { Answer } from "@/lib/base";
import type { RunSetup } from "@/lib/setup";
import type { BenchProps } from "./shared";

export interface SavedSetup {
  readonly id: string;
  readonly name: string;
  readonly setup: RunSetup;
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
  saved,
  last,
  store,
}: BenchProps & { saved: readonly SavedSetup[]; last: RunSetup | null; store: SetupStore }) {
  const router = useRouter();
  const apply = (setup: RunSetup) => dispatch({ type: "setup", setup });
  return (
    <div style={{ display: "grid", gap: "var(--space-4)" }}>
      {state.setupsBefore.length > 0 && (
        <Button onClick={() => dispatch({ type: "setup.undo" })}>
          <Undo2 size={20} aria-hidden="true" /> Undo the last change of the set-up
        </Button>
      )}
      <SavedSetups
        saved={saved}
        last={last}
        onApply={apply}
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
      <SetupForm setup={state.setup} onChange={apply} units={units} findings={assessment.setup} />
    </div>
  );
}
