import { Button, form, SaidLine } from "@/components/ui";
import { CollisionNotice } from "./collision-notice";
import type { useEdited } from "./use-edited";

/** The save button with the sentence that came back, and the choice between two versions where they collided. */
export function SaveBar<C>({
  edited: { pending, said, state, readStored, choices, bringBack },
  isLeaving = false,
  children,
}: {
  readonly edited: ReturnType<typeof useEdited<C>>;
  readonly isLeaving?: boolean;
  readonly children: string;
}) {
  const works = pending || isLeaving;
  return (
    <>
      {readStored && <CollisionNotice state={state} readStored={readStored} choices={choices} />}
      <div className={form.row}>
        <Button type="submit" tone="main" disabled={works || state.kind === "collided"}>
          {works ? "Working …" : children}
        </Button>
        {bringBack && <Button onClick={bringBack}>Bring mine back</Button>}
      </div>
      <SaidLine answer={said} />
    </>
  );
}
