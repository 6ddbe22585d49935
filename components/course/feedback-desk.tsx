"use client";

import Link from "next/link";
import { useReducer, useState, useTransition, type ReactNode } from "react";
import type { CanvasPhoto } from "@/components/canvas-kit";
import { CollisionNotice, isCollision, useRevision, type Save, type Stored } from "@/components/saving";
import { Button, Chip, Field, page, Panel } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import {
  editLayer,
  itemsOver,
  saysSomething,
  startLayer,
  withItems,
  type FeedbackContent,
  type LayerAction,
  type LayerHistory,
  type RubricLine,
} from "@/lib/course";
import type { Drawing } from "@/lib/marks";
import styles from "./feedback-desk.module.css";
import { LayerBoard } from "@/components/layer";
import { RubricMarking } from "./rubric-marking";

export interface DeskPhoto extends CanvasPhoto {
  readonly id: string;
  readonly drawing: Drawing;
}

export interface FeedbackDeskProps {
  readonly photos: readonly DeskPhoto[];
  readonly draft: FeedbackContent;
  readonly revision: number;
  readonly rubric: readonly RubricLine[];
  readonly phrases: readonly string[];
  readonly save: Save<FeedbackContent>;
  /** The draft that is in the store now; asked only after a collision. */
  readonly readStored: () => Promise<Answer<Stored<FeedbackContent>>>;
  readonly giveBack: (basedOn: number) => Promise<Answer<unknown>>;
  /** What Toeline and the student say, beside. */
  readonly beside: ReactNode;
}

/** The instructor's desk: the photo to draw on, what to say beside it, one press to return it. */
export function FeedbackDesk(props: FeedbackDeskProps) {
  const { photos, rubric, phrases } = props;
  const desk = useDesk(props);
  const { said, change, layers } = desk;
  return (
    <div className={styles.desk}>
      <DeskPhotos photos={photos} layers={layers} onDraw={desk.draw} />
      <div className={styles.side}>
        <RemarksPanel {...{ said, phrases }} onChange={change} />
        {rubric.length > 0 && (
          <Panel title="Rubric" tone="purple">
            <RubricMarking lines={rubric} marks={said.marks} onChange={(marks) => change({ marks })} />
          </Panel>
        )}
        <ReturnPanel {...props} desk={desk} />
        {props.beside}
      </div>
    </div>
  );
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
  onDraw,
}: {
  photos: readonly DeskPhoto[];
  layers: Layers;
  onDraw: (photoId: string, action: LayerAction) => void;
}) {
  const [shownId, setShownId] = useState(photos[0]?.id ?? "");
  const shown = photos.find(({ id }) => id === shownId);
  const history = layers[shownId];
  return (
    <div>
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
          onAction={(action) => onDraw(shown.id, action)}
        />
      )}
    </div>
  );
}

function RemarksPanel({
  said: { quick, remark },
  phrases,
  onChange,
}: {
  said: FeedbackContent;
  phrases: readonly string[];
  onChange: (part: Partial<FeedbackContent>) => void;
}) {
  const toggle = (text: string) =>
    onChange({ quick: quick.includes(text) ? quick.filter((one) => one !== text) : [...quick, text] });
  return (
    <Panel title="Remarks" tone="ok">
      <div className={page.buttons} role="group" aria-label="Quick remarks">
        {[...new Set([...phrases, ...quick])].map((text) => (
          <Chip key={text} on={quick.includes(text)} onClick={() => toggle(text)}>
            {text}
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
            rows={4}
            maxLength={4000}
            value={remark}
            onChange={(event) => onChange({ remark: event.target.value })}
          />
        )}
      </Field>
    </Panel>
  );
}

function ReturnPanel({
  readStored,
  giveBack,
  desk: { said, saving, takeStored },
}: FeedbackDeskProps & { desk: ReturnType<typeof useDesk> }) {
  const { state, flush } = saving;
  const giveBackSaved = async () => {
    const revision = await flush();
    if (revision === null) return null;
    const answer = await giveBack(revision);
    if (answer.ok || !isCollision(answer)) return answer;
    saving.collide(answer);
    return null;
  };
  return (
    <Panel title="Return it" tone="straw">
      <p data-testid="draft-state" data-state={state.kind} role="status">
        {state.kind === "saved" && "Draft saved."}
        {state.kind === "saving" && "Saving the draft …"}
        {state.kind === "refused" && inWords(state.refusal)}
      </p>
      <CollisionNotice
        state={state}
        readStored={readStored}
        choices={[
          { label: "Keep mine", choose: saving.keepOwn },
          { label: "Take the other one", choose: takeStored },
        ]}
      />
      <GiveBack ready={saysSomething(said)} giveBack={giveBackSaved} />
    </Panel>
  );
}

/** What is drawn over each photo, by its id. */
type Layers = Readonly<Record<string, LayerHistory>>;

const layersOf = (photos: readonly DeskPhoto[], { layers }: FeedbackContent): Layers =>
  Object.fromEntries(photos.map(({ id }) => [id, startLayer(itemsOver(layers, id))]));

const editLayers = (layers: Layers, next: Layers): Layers => ({ ...layers, ...next });

/** Asked twice, because it cannot be taken back. */
function GiveBack({ ready, giveBack }: { ready: boolean; giveBack: () => Promise<Answer<unknown> | null> }) {
  const [asking, setAsking] = useState(false);
  const [message, setMessage] = useState<string | null>(null);
  const [pending, start] = useTransition();
  const run = () =>
    start(async () => {
      const answer = await giveBack();
      setAsking(false);
      setMessage(answer && !answer.ok ? inWords(answer) : null);
    });
  return (
    <>
      {asking ? (
        <div className={page.buttons} role="group" aria-label="Return it now?">
          <span>Once returned it cannot be changed.</span>
          <Button tone="main" autoFocus disabled={pending} onClick={run}>
            Yes, return it
          </Button>
          <Button onClick={() => setAsking(false)}>Not yet</Button>
        </div>
      ) : (
        <Button tone="main" size="large" disabled={!ready} onClick={() => setAsking(true)}>
          Return feedback
        </Button>
      )}
      {!ready && <p>Draw, mark a line or write a remark first.</p>}
      {message && (
        <p className={page.alert} role="alert">
          {message}
        </p>
      )}
    </>
  );
}
