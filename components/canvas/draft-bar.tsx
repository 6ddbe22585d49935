import { Check, CircleMinus, Magnet, Undo2, X } from "lucide-react";
import type { Drawing } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import styles from "./draft-bar.module.css";
import { finish } from "./draft";
import { mayFollow } from "./followed";
import type { Asked } from "./types";
import type { Marking } from "./use-marking";
import type { PickedPoint } from "./use-picked-point";
import { FOLLOW_KEY, followWords, hintFor, pickedHint } from "./words";

const markingTools: ReadonlySet<string> = new Set(["point", "line", "outline"]);

/** What to do next, the size so far, and large buttons for what a thumb would otherwise need a keyboard for. */
export function DraftBar({
  marking,
  picked,
  drawing,
  size,
  asked,
  touching,
}: {
  marking: Marking;
  picked: PickedPoint;
  drawing: Drawing;
  size: string;
  asked: Asked | null;
  /** A finger is on the photo: the bar lets go of the space under it. */
  touching: boolean;
}) {
  const { tool, draft, repeat } = marking;
  const isPath = draft?.kind === "path" && draft.points.length > 0;
  const hint = asked && tool === "move" && draft === null ? asked.words : hintWords(marking, picked, drawing);
  return (
    <div className={styles.bar} data-touching={touching}>
      <p className={styles.hint}>
        {size !== "" && <strong className={styles.size}>{size}</strong>} {hint}
      </p>
      {repeat !== null && markingTools.has(tool) && (
        <button type="button" className={styles.plain} onClick={() => marking.setRepeat(null)}>
          Naming each: {imperfections[repeat].name} <X aria-label="Ask each time" className={styles.icon} />
        </button>
      )}
      {mayFollow(tool) && <FollowSwitch marking={marking} isShort={isPath} />}
      {isPath && <PathButtons marking={marking} />}
      {draft === null && picked.handle?.remove && <RemovePoint picked={picked} />}
      {draft === null && asked && <Answers asked={asked} />}
    </div>
  );
}

function hintWords({ tool, draft, scaleKind, edge, follow }: Marking, picked: PickedPoint, drawing: Drawing) {
  return picked.handle && draft === null
    ? pickedHint(picked.number, picked.count, picked.handle.remove !== null)
    : hintFor(tool, draft, drawing, scaleKind, edge, follow.on);
}

function Answers({ asked }: { asked: Asked }) {
  return (
    <div className={styles.buttons} data-testid="asked">
      {asked.answers.map(({ label, isMain = false, isOff = false, onPress }) => (
        <button
          key={label}
          type="button"
          className={isMain ? styles.main : styles.plain}
          disabled={isOff}
          onClick={onPress}
        >
          {isMain && <Check aria-hidden="true" className={styles.icon} />} {label}
        </button>
      ))}
    </div>
  );
}

/** Whether the next stretch runs along the edge; what is placed stays as it is. */
function FollowSwitch({
  marking: { follow, say },
  isShort,
}: {
  marking: Marking;
  /** On a phone the sign alone, where buttons need the room. */
  isShort: boolean;
}) {
  return (
    <button
      type="button"
      className={styles.switch}
      data-short={isShort}
      aria-label={followWords.name}
      aria-pressed={follow.on}
      aria-keyshortcuts={FOLLOW_KEY.toUpperCase()}
      title={`${followWords.name} (${FOLLOW_KEY.toUpperCase()})`}
      onClick={() => say(follow.toggle() ? followWords.on : followWords.off)}
    >
      <Magnet aria-hidden="true" className={styles.icon} /> <span>{followWords.name}</span>
    </button>
  );
}

/** To finish what is being drawn, go back a point, or give it up. */
function PathButtons({ marking }: { marking: Marking }) {
  return (
    <div className={styles.buttons}>
      <button
        type="button"
        className={styles.main}
        onClick={marking.done}
        disabled={finish(marking.draft) === null}
      >
        <Check aria-hidden="true" className={styles.icon} /> Done
      </button>
      <button type="button" className={styles.plain} onClick={marking.undo}>
        <Undo2 aria-hidden="true" className={styles.icon} /> Last point
      </button>
      <button type="button" className={styles.plain} onClick={marking.cancel}>
        <X aria-hidden="true" className={styles.icon} /> Cancel
      </button>
    </div>
  );
}

function RemovePoint({ picked }: { picked: PickedPoint }) {
  return (
    <div className={styles.buttons}>
      <button
        type="button"
        className={styles.plain}
        onClick={() => {
          if (picked.handle) picked.remove(picked.handle);
        }}
      >
        <CircleMinus aria-hidden="true" className={styles.icon} /> Remove point {picked.number}
      </button>
    </div>
  );
}
