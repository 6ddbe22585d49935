"use client";

import Link from "next/link";
import { useRouter } from "next/navigation";
import { useEffect, useReducer, useRef, useState, type ReactNode } from "react";
import type { CanvasPhoto } from "@/components/canvas-kit";
import { CollisionNotice, isCollision, useRevision, type Save, type Stored } from "@/components/saving";
import { Button, Chip, Field, page } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import {
  editLayer,
  itemsOver,
  pressLine,
  restThere,
  rubricScore,
  saysSomething,
  scoreText,
  startLayer,
  withItems,
  type FeedbackContent,
  type LayerAction,
  type LayerHistory,
  type RubricLine,
} from "@/lib/course";
import type { Drawing } from "@/lib/marks";
import { deskCommand, type DeskCommand } from "./desk-keys";
import styles from "./feedback-desk.module.css";
import { LayerBoard } from "@/components/layer";
import { RubricMarking } from "./rubric-marking";

export interface DeskPhoto extends CanvasPhoto {
  readonly id: string;
  readonly drawing: Drawing;
}

/** Where this hand-in stands among those that wait. */
export interface DeskRow {
  /** From 1. */
  readonly place: number;
  readonly of: number;
  readonly previous: string | null;
  readonly next: string | null;
  /** Where a return leads: the next that waits; null: none does, and the answer itself is shown. */
  readonly after: string | null;
  /** Photo of the next one, fetched ahead. */
  readonly nextPhoto: string | null;
}

export interface FeedbackDeskProps {
  readonly photos: readonly DeskPhoto[];
  readonly draft: FeedbackContent;
  readonly revision: number;
  readonly rubric: readonly RubricLine[];
  readonly phrases: readonly string[];
  readonly row: DeskRow;
  readonly save: Save<FeedbackContent>;
  /** The draft that is in the store now; asked only after a collision. */
  readonly readStored: () => Promise<Answer<Stored<FeedbackContent>>>;
  readonly giveBack: (basedOn: number) => Promise<Answer<unknown>>;
  /** Keeps a remark among the instructor's own. */
  readonly keepPhrase: (text: string) => Promise<Answer<unknown>>;
  /** Whose it is and which try. */
  readonly head: ReactNode;
  /** What the student said and how the try before was answered: under the photo. */
  readonly under: ReactNode;
  /** What Toeline says, behind the rest. */
  readonly beside: ReactNode;
}

/** The instructor's desk: the photo to draw on, what to say beside it, one press to return it and take the next. */
export function FeedbackDesk(props: FeedbackDeskProps) {
  const { photos, rubric, row } = props;
  const desk = useDesk(props);
  const { said, change, layers } = desk;
  const [kept, keep] = useState<readonly string[]>([]);
  const phrases = [...new Set([...props.phrases, ...kept])];
  const returning = useReturning(props, desk);
  useDeskKeys((command) => {
    if (command.do === "line") change({ marks: pressLine(rubric, said.marks, command.at) });
    else if (command.do === "rest") change({ marks: restThere(rubric, said.marks) });
    else if (command.do === "phrase") change({ quick: toggled(said.quick, phrases[command.at]) });
    else if (command.do === "return") returning.ask();
    else returning.go(command.do === "next" ? row.next : row.previous);
  });
  return (
    <div className={styles.desk}>
      <div className={styles.head}>{props.head}</div>
      <div className={styles.photoSide}>
        <DeskPhotos photos={photos} layers={layers} phrases={phrases} onDraw={desk.draw} />
        <div className={styles.under}>{props.under}</div>
      </div>
      <div className={styles.side} tabIndex={-1}>
        {rubric.length > 0 && (
          <RubricMarking lines={rubric} marks={said.marks} onChange={(marks) => change({ marks })} keyed />
        )}
        <Remarks {...{ said, phrases }} onChange={change} keepPhrase={props.keepPhrase} onKept={keep} />
        <p className={styles.keys}>
          A number marks its line: there at first, a quarter less with each further press. R: all others are
          there. Shift and a number: a quick remark. Page keys: previous and next. Ctrl and Enter: return it.
        </p>
        <details className={page.details}>
          <summary>What Toeline reads off the bead</summary>
          {props.beside}
        </details>
      </div>
      <DeskBar {...props} desk={desk} returning={returning} />
      {row.nextPhoto && <link rel="prefetch" as="image" href={row.nextPhoto} />}
    </div>
  );
}

const toggled = (quick: readonly string[], text: string | undefined): string[] =>
  text === undefined
    ? [...quick]
    : quick.includes(text)
      ? quick.filter((one) => one !== text)
      : [...quick, text];

/** Keys are heard on the whole page; what is typed into a field stays there. */
function useDeskKeys(obey: (command: DeskCommand) => void) {
  const latest = useRef(obey);
  useEffect(() => {
    latest.current = obey;
  });
  useEffect(() => {
    const heard = (event: KeyboardEvent) => {
      const { target } = event;
      const typing = target instanceof HTMLElement && target.matches("input, textarea, select");
      const command = deskCommand(event, typing);
      if (command === null || event.defaultPrevented) return;
      event.preventDefault();
      latest.current(command);
    };
    document.addEventListener("keydown", heard);
    return () => document.removeEventListener("keydown", heard);
  }, []);
}

/** What was said and drawn so far, saved as it grows. */
function useDesk({ photos, draft, revision, save }: FeedbackDeskProps) {
  const [said, setSaid] = useState(draft);
  const [layers, edit] = useReducer(editLayers, draft, (first) => layersOf(photos, first));
  const saving = useRevision("auto", revision, said, save);
  return {
    said,
    layers,
    saving,
    change: (part: Partial<FeedbackContent>) => setSaid((old) => ({ ...old, ...part })),
    draw: (photoId: string, action: LayerAction) => {
      const history = layers[photoId];
      if (!history) return;
      const next = editLayer(history, action);
      edit({ [photoId]: next });
      if (next !== history)
        setSaid((old) => ({ ...old, layers: [...withItems(old.layers, photoId, next.present)] }));
    },
    takeStored: (stored: Stored<FeedbackContent>) => {
      setSaid(stored.content);
      edit(layersOf(photos, stored.content));
      saving.takeStored(stored);
    },
  };
}

function DeskPhotos({
  photos,
  layers,
  phrases,
  onDraw,
}: {
  photos: readonly DeskPhoto[];
  layers: Layers;
  phrases: readonly string[];
  onDraw: (photoId: string, action: LayerAction) => void;
}) {
  const [shownId, setShownId] = useState(photos[0]?.id ?? "");
  const shown = photos.find(({ id }) => id === shownId);
  const history = layers[shownId];
  return (
    <div className={styles.photoFrame}>
      {photos.length > 1 && (
        <div className={styles.photos} role="group" aria-label="Photos">
          {photos.map(({ id }, i) => (
            <Chip key={id} on={id === shownId} onClick={() => setShownId(id)}>
              Photo {i + 1}
            </Chip>
          ))}
        </div>
      )}
      {shown && history && (
        <LayerBoard
          key={shown.id}
          photo={shown}
          drawing={shown.drawing}
          history={history}
          phrases={phrases}
          onAction={(action) => onDraw(shown.id, action)}
        />
      )}
    </div>
  );
}

function Remarks({
  said: { quick, remark },
  phrases,
  onChange,
  keepPhrase,
  onKept,
}: {
  said: FeedbackContent;
  phrases: readonly string[];
  onChange: (part: Partial<FeedbackContent>) => void;
  keepPhrase: FeedbackDeskProps["keepPhrase"];
  onKept: (add: (kept: readonly string[]) => readonly string[]) => void;
}) {
  const [message, setMessage] = useState<string | null>(null);
  const text = remark.trim();
  const keep = async () => {
    const answer = await keepPhrase(text);
    setMessage(answer.ok ? "Kept: it stands above from now on." : inWords(answer));
    if (answer.ok) onKept((kept) => [...kept, text]);
  };
  return (
    <div className={styles.remarks}>
      <div className={page.buttons} role="group" aria-label="Quick remarks">
        {[...new Set([...phrases, ...quick])].map((one, i) => (
          <Chip
            key={one}
            on={quick.includes(one)}
            aria-label={one}
            onClick={() => onChange({ quick: toggled(quick, one) })}
          >
            {i < 9 && i < phrases.length && <kbd aria-hidden="true">⇧{i + 1} </kbd>}
            {one}
          </Chip>
        ))}
      </div>
      {phrases.length === 0 && (
        <p>
          <Link className={page.link} href="/feedback/phrases">
            Write your quick remarks
          </Link>{" "}
          once, then they stand here.
        </p>
      )}
      <Field label="Remark">
        {(ids) => (
          <textarea
            {...ids}
            rows={2}
            maxLength={4000}
            value={remark}
            onChange={(event) => onChange({ remark: event.target.value })}
          />
        )}
      </Field>
      {text !== "" && text.length <= 300 && !phrases.includes(text) && (
        <Button onClick={() => void keep()}>Keep as a remark of mine</Button>
      )}
      {message && <p role="status">{message}</p>}
    </div>
  );
}

/** Saves what stands on the screen and returns it. Why it was refused, in words; "" when it went; null: the screen says why. */
async function sendBack(
  { flush, collide }: ReturnType<typeof useDesk>["saving"],
  giveBack: FeedbackDeskProps["giveBack"],
): Promise<string | null> {
  const revision = await flush();
  if (revision === null) return null;
  const answer = await giveBack(revision);
  if (answer.ok) return "";
  if (!isCollision(answer)) return inWords(answer);
  collide(answer);
  return null;
}

/** The way of an answer back to the student: what stands on the screen is saved, returned, and the next one comes. */
function useReturning({ giveBack, row, rubric }: FeedbackDeskProps, desk: ReturnType<typeof useDesk>) {
  const router = useRouter();
  const { said, saving } = desk;
  const [asking, setAsking] = useState(false);
  const [message, setMessage] = useState<string | null>(null);
  // No transition: two server actions within one wait for each other.
  const [pending, setPending] = useState(false);
  const ready = saysSomething(said);
  const whole = rubricScore(rubric, said.marks).open === 0;
  const run = () => {
    setAsking(false);
    setPending(true);
    void sendBack(saving, giveBack)
      .then((refused) => {
        setMessage(refused);
        if (refused === "" && row.after) router.push(row.after);
      })
      .catch(() => setMessage("Toeline did not answer. The draft is kept; try again."))
      .finally(() => setPending(false));
  };
  return {
    ready,
    whole,
    asking,
    message,
    pending,
    run,
    notYet: () => setAsking(false),
    /** Asked twice only where a line is still open: it cannot be taken back. */
    ask: () => {
      if (!ready || pending) return;
      if (whole) run();
      else setAsking(true);
    },
    go: (href: string | null) => {
      if (href) void saving.flush().then((revision) => revision !== null && router.push(href));
    },
  };
}

function DeskBar({
  readStored,
  rubric,
  row,
  desk: { said, saving, takeStored },
  returning,
}: FeedbackDeskProps & {
  desk: ReturnType<typeof useDesk>;
  returning: ReturnType<typeof useReturning>;
}) {
  const { state } = saving;
  return (
    <div className={styles.bar} data-own-bar>
      <CollisionNotice
        state={state}
        readStored={readStored}
        choices={[
          { label: "Keep mine", choose: saving.keepOwn },
          { label: "Take the other one", choose: takeStored },
        ]}
      />
      {returning.message && (
        <p className={page.alert} role="alert">
          {returning.message}
        </p>
      )}
      <div className={styles.ways}>
        <Button disabled={!row.previous} title="PgUp" onClick={() => returning.go(row.previous)}>
          Previous
        </Button>
        <span>
          {row.place} of {row.of}
        </span>
        <Button disabled={!row.next} title="PgDn" onClick={() => returning.go(row.next)}>
          Next
        </Button>
      </div>
      <p className={styles.state}>
        <strong data-testid="score">{scoreText(rubricScore(rubric, said.marks))}</strong>
        <span data-testid="draft-state" data-state={state.kind} role="status">
          {state.kind === "saved" && "Draft saved."}
          {state.kind === "saving" && "Saving the draft …"}
          {state.kind === "refused" && inWords(state.refusal)}
        </span>
      </p>
      <Giving {...{ returning, row }} />
    </div>
  );
}

/** One press where all lines are marked; where one is open it is asked once more. */
function Giving({ returning, row }: { returning: ReturnType<typeof useReturning>; row: DeskRow }) {
  if (returning.asking)
    return (
      <div className={page.buttons} role="group" aria-label="Return it now?">
        <span>A line is not marked. Once returned it cannot be changed.</span>
        <Button tone="main" autoFocus disabled={returning.pending} onClick={returning.run}>
          Yes, return it
        </Button>
        <Button onClick={returning.notYet}>Not yet</Button>
      </div>
    );
  return (
    <Button
      tone="main"
      size="large"
      title="Ctrl and Enter"
      disabled={!returning.ready || returning.pending}
      onClick={returning.ask}
    >
      {row.after ? "Return and next" : "Return feedback"}
    </Button>
  );
}

/** What is drawn over each photo, by its id. */
type Layers = Readonly<Record<string, LayerHistory>>;

const layersOf = (photos: readonly DeskPhoto[], { layers }: FeedbackContent): Layers =>
  Object.fromEntries(photos.map(({ id }) => [id, startLayer(itemsOver(layers, id))]));

const editLayers = (layers: Layers, next: Layers): Layers => ({ ...layers, ...next });
