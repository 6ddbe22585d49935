"use client";

import { ArrowUpRight, Hand, Lasso, Pencil, Redo2, Trash2, Type, Undo2 } from "lucide-react";
import dynamic from "next/dynamic";
import { useState } from "react";
import { newMarkId } from "@/components/canvas/new-mark-id";
import type { CanvasPhoto } from "@/components/canvas";
import { Button, Field } from "@/components/ui";
import {
  itemName,
  MOST_WORDS,
  type LayerAction,
  type LayerHistory,
  type LayerItem,
  type LayerPoint,
} from "@/lib/course";
import type { Drawing } from "@/lib/marks";
import styles from "./layer-canvas.module.css";
import { textItem, type LayerTool } from "./layer-draft";

/** Konva draws in the browser only; until it has arrived the place is kept free. */
const LayerCanvas = dynamic(() => import("./layer-canvas"), {
  ssr: false,
  loading: () => <div className={styles.waiting}>Loading the photo …</div>,
});

const tools = [
  { tool: "move", name: "Move", Icon: Hand },
  { tool: "arrow", name: "Arrow", Icon: ArrowUpRight },
  { tool: "text", name: "Text", Icon: Type },
  { tool: "freehand", name: "Freehand", Icon: Pencil },
  { tool: "outline", name: "Outline", Icon: Lasso },
] as const satisfies readonly { tool: LayerTool; name: string; Icon: unknown }[];

export interface LayerBoardProps {
  readonly photo: CanvasPhoto;
  readonly drawing: Drawing;
  readonly history: LayerHistory;
  readonly onAction: (action: LayerAction) => void;
}

/** One photo with the tools to draw on it and a list of what was drawn. */
export function LayerBoard({ photo, drawing, history, onAction }: LayerBoardProps) {
  const [tool, setTool] = useState<LayerTool>("arrow");
  const [selectedId, setSelectedId] = useState<string | null>(null);
  const [textAt, setTextAt] = useState<LayerPoint | null>(null);
  const selected = history.present.find(({ id }) => id === selectedId) ?? null;
  return (
    <div>
      <div className={styles.tools} role="toolbar" aria-label="Drawing">
        {tools.map(({ tool: one, name, Icon }) => (
          <button
            key={one}
            type="button"
            aria-pressed={tool === one}
            onClick={() => {
              setTool(one);
              setTextAt(null);
            }}
          >
            <Icon size={20} aria-hidden="true" /> {name}
          </button>
        ))}
        <button
          type="button"
          aria-label="Undo"
          disabled={history.past.length === 0}
          onClick={() => onAction({ type: "undo" })}
        >
          <Undo2 size={20} aria-hidden="true" />
        </button>
        <button
          type="button"
          aria-label="Redo"
          disabled={history.future.length === 0}
          onClick={() => onAction({ type: "redo" })}
        >
          <Redo2 size={20} aria-hidden="true" />
        </button>
        <button
          type="button"
          disabled={!selected}
          onClick={() => selected && onAction({ type: "remove", id: selected.id })}
        >
          <Trash2 size={20} aria-hidden="true" /> Delete
        </button>
      </div>
      {textAt && (
        <WordsField
          label="Words on the photo"
          start=""
          onDone={(words) => {
            const item = textItem(newMarkId(), textAt, words);
            if (item) onAction({ type: "add", item });
            setSelectedId(item?.id ?? null);
            setTextAt(null);
          }}
          onCancel={() => setTextAt(null)}
        />
      )}
      {selected && "words" in selected && !textAt && (
        <WordsField
          key={selected.id}
          label={selected.kind === "arrow" ? "Words at the arrow" : "Words on the photo"}
          start={selected.words}
          onDone={(words) => {
            onAction({ type: "words", id: selected.id, words });
            setSelectedId(null);
          }}
          onCancel={() => setSelectedId(null)}
          waits
        />
      )}
      <LayerCanvas
        key={photo.viewUrl}
        photo={photo}
        drawing={drawing}
        history={history}
        onAction={onAction}
        tool={tool}
        onToolChange={setTool}
        selectedId={selectedId}
        onSelect={setSelectedId}
        onTextAt={setTextAt}
      />
      <Drawn items={history.present} onSelect={setSelectedId} onAction={onAction} />
    </div>
  );
}

function WordsField({
  label,
  start,
  onDone,
  onCancel,
  waits = false,
}: {
  label: string;
  start: string;
  onDone: (words: string) => void;
  onCancel: () => void;
  /** Does not take the focus: drawing goes on unless somebody types. */
  waits?: boolean;
}) {
  const [words, setWords] = useState(start);
  return (
    <form
      className={styles.words}
      onSubmit={(event) => {
        event.preventDefault();
        onDone(words);
      }}
    >
      <Field label={label}>
        {(ids) => (
          <input
            {...ids}
            autoFocus={!waits}
            value={words}
            maxLength={MOST_WORDS}
            autoComplete="off"
            onChange={(event) => setWords(event.target.value)}
            onKeyDown={(event) => event.key === "Escape" && onCancel()}
          />
        )}
      </Field>
      <Button type="submit">Put there</Button>
    </form>
  );
}

/** Everything drawn, as a list: the way to it without aiming. */
function Drawn({
  items,
  onSelect,
  onAction,
}: {
  items: readonly LayerItem[];
  onSelect: (id: string) => void;
  onAction: (action: LayerAction) => void;
}) {
  if (items.length === 0) return <p>Nothing drawn yet. Drag over the photo to draw an arrow.</p>;
  return (
    <ul aria-label="What you drew">
      {items.map((item) => (
        <li key={item.id}>
          <div className={styles.itemRow}>
            <Button onClick={() => onSelect(item.id)}>{itemName(item)}</Button>
            <Button
              aria-label={`Delete ${itemName(item)}`}
              onClick={() => onAction({ type: "remove", id: item.id })}
            >
              <Trash2 size={20} aria-hidden="true" />
            </Button>
          </div>
        </li>
      ))}
    </ul>
  );
}
