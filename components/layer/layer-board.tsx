"use client";

import { ArrowUpRight, Hand, Lasso, Pencil, Redo2, Trash2, Type, Undo2 } from "lucide-react";
import dynamic from "next/dynamic";
import { useRef, useState, type KeyboardEvent } from "react";
import { EaselWaiting, newMarkId, type CanvasPhoto } from "@/components/canvas-kit";
import { Button, Field } from "@/components/ui";
import {
  countsAs,
  countsAsWords,
  itemName,
  MOST_WORDS,
  type LayerAction,
  type LayerHistory,
  type LayerItem,
  type LayerPoint,
} from "@/lib/course";
import type { Drawing } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import styles from "./layer-canvas.module.css";
import { textItem, type LayerTool } from "./layer-draft";

/** A canvas lives in the browser only; until it has arrived the place is kept free. */
const LayerCanvas = dynamic(() => import("./layer-canvas"), { ssr: false, loading: LayerWaiting });

function LayerWaiting() {
  return (
    <div className={styles.board}>
      <EaselWaiting />
    </div>
  );
}

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
  /** What the instructor says often; the first nine go by their number. */
  readonly phrases: readonly string[];
}

/**
 * One photo with the tools to draw on it and a list of what was drawn. Whatever is asked lies over the photo, never above
 * it: a photo that moves under the hand is pointed at wrongly.
 */
export function LayerBoard({ photo, drawing, history, onAction, phrases }: LayerBoardProps) {
  const board = useBoard(history, onAction);
  const { tool, textAt, selected, frame } = board;
  return (
    <div className={styles.work}>
      <Tools {...{ tool, history, onAction, selectedId: selected?.id ?? null }} onTool={board.takeTool} />
      <div className={styles.frame} ref={frame}>
        <LayerCanvas
          key={photo.viewUrl}
          {...{ photo, drawing, history, tool }}
          selectedId={board.selectedId}
          onAction={board.act}
          onToolChange={board.setTool}
          onSelect={board.select}
          onTextAt={board.setTextAt}
        />
        {textAt && (
          <WordsField
            label="Words on the photo"
            start=""
            phrases={phrases}
            high={textAt.y > photo.heightPx / 2}
            onDone={(words) => board.putText(textAt, words)}
            onCancel={() => board.setTextAt(null)}
          />
        )}
        {selected && "words" in selected && !textAt && (
          <WordsField
            key={selected.id}
            label={selected.kind === "arrow" ? "Words at the arrow" : "Words on the photo"}
            start={selected.words}
            phrases={phrases}
            high={placeOf(selected).y > photo.heightPx / 2}
            waits={board.freshId !== selected.id}
            onDone={(words) => board.word(selected.id, words)}
            onCancel={board.leaveWords}
          />
        )}
      </div>
      <Drawn items={history.present} onSelect={board.select} onAction={onAction} />
    </div>
  );
}

const placeOf = (item: Extract<LayerItem, { words: string }>): LayerPoint =>
  item.kind === "arrow" ? item.to : item.at;

/** The hand goes back to the board: the next key is the board's again. */
const toBoard = (frame: HTMLElement | null): void =>
  frame?.querySelector<HTMLElement>("[data-testid=layer-canvas]")?.focus({ preventScroll: true });

/** Tool, what is picked, and which arrow was just drawn: that one asks for its words at once. */
function useBoard(history: LayerHistory, onAction: (action: LayerAction) => void) {
  const [tool, setTool] = useState<LayerTool>("arrow");
  const [selectedId, setSelectedId] = useState<string | null>(null);
  const [freshId, setFreshId] = useState<string | null>(null);
  const [textAt, setTextAt] = useState<LayerPoint | null>(null);
  const frame = useRef<HTMLDivElement>(null);
  const leave = (id: string | null) => {
    setSelectedId(id);
    setFreshId(null);
    setTextAt(null);
    toBoard(frame.current);
  };
  return {
    tool,
    setTool,
    selectedId,
    selected: history.present.find(({ id }) => id === selectedId) ?? null,
    freshId,
    textAt,
    setTextAt,
    frame,
    takeTool: (next: LayerTool) => (setTool(next), setTextAt(null)),
    act: (action: LayerAction) => {
      if (action.type === "add" && action.item.kind === "arrow") setFreshId(action.item.id);
      onAction(action);
    },
    select: setSelectedId,
    word: (id: string, words: string) => {
      onAction({ type: "words", id, words });
      leave(null);
    },
    putText: (at: LayerPoint, words: string) => {
      const item = textItem(newMarkId(), at, words);
      if (item) onAction({ type: "add", item });
      leave(item?.id ?? null);
    },
    leaveWords: () => leave(selectedId),
  };
}

function Tools({
  tool,
  onTool,
  history,
  selectedId,
  onAction,
}: {
  tool: LayerTool;
  onTool: (tool: LayerTool) => void;
  history: LayerHistory;
  /** What Delete takes away; null while nothing is picked. */
  selectedId: string | null;
  onAction: (action: LayerAction) => void;
}) {
  const { past, future } = history;
  return (
    <div className={styles.tools} role="toolbar" aria-label="Drawing">
      {tools.map(({ tool: one, name, Icon }) => (
        <button key={one} type="button" aria-pressed={tool === one} onClick={() => onTool(one)}>
          <Icon size={20} aria-hidden="true" /> {name}
        </button>
      ))}
      <button
        type="button"
        aria-label="Undo"
        disabled={past.length === 0}
        onClick={() => onAction({ type: "undo" })}
      >
        <Undo2 size={20} aria-hidden="true" />
      </button>
      <button
        type="button"
        aria-label="Redo"
        disabled={future.length === 0}
        onClick={() => onAction({ type: "redo" })}
      >
        <Redo2 size={20} aria-hidden="true" />
      </button>
      <button
        type="button"
        disabled={selectedId === null}
        onClick={() => selectedId !== null && onAction({ type: "remove", id: selectedId })}
      >
        <Trash2 size={20} aria-hidden="true" /> Delete
      </button>
    </div>
  );
}

/**
 * Asks for words over the photo. While nothing is typed a number takes one of the phrases; words that begin with the name of
 * an imperfection count as one, and it is said so before they are put there.
 */
function WordsField({
  label,
  start,
  phrases,
  high,
  onDone,
  onCancel,
  waits = false,
}: {
  label: string;
  start: string;
  phrases: readonly string[];
  /** What it speaks of lies low on the photo: the field goes on top. */
  high: boolean;
  onDone: (words: string) => void;
  onCancel: () => void;
  /** Does not take the focus: drawing goes on unless somebody types. */
  waits?: boolean;
}) {
  const [words, setWords] = useState(start);
  const kind = countsAs(words);
  const quick = phrases.slice(0, 9);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Escape") return onCancel();
    const phrase = words === "" && /^[1-9]$/.test(event.key) ? quick[Number(event.key) - 1] : undefined;
    if (phrase === undefined) return;
    event.preventDefault();
    onDone(phrase.slice(0, MOST_WORDS));
  };
  return (
    <form
      className={`${styles.words} ${high ? styles.high : ""}`}
      onSubmit={(event) => {
        event.preventDefault();
        onDone(words);
      }}
    >
      <Field label={label} hint={kind && `Counts as ${imperfections[kind].name} on this bead.`}>
        {(ids) => (
          <input
            {...ids}
            autoFocus={!waits}
            value={words}
            maxLength={MOST_WORDS}
            autoComplete="off"
            onChange={(event) => setWords(event.target.value)}
            onKeyDown={onKeyDown}
          />
        )}
      </Field>
      <Button type="submit">Put there</Button>
      {words === "" && quick.length > 0 && (
        <ol className={styles.quick} aria-label="Phrases by number">
          {quick.map((phrase, i) => (
            <li key={phrase}>
              <button type="button" onClick={() => onDone(phrase.slice(0, MOST_WORDS))}>
                <kbd>{i + 1}</kbd> {phrase}
              </button>
            </li>
          ))}
        </ol>
      )}
    </form>
  );
}

/** Everything drawn, as a row of its own height: the way to it without aiming. */
function Drawn({
  items,
  onSelect,
  onAction,
}: {
  items: readonly LayerItem[];
  onSelect: (id: string) => void;
  onAction: (action: LayerAction) => void;
}) {
  if (items.length === 0)
    return <p className={styles.drawn}>Nothing drawn yet. Drag over the photo to draw an arrow.</p>;
  return (
    <ul aria-label="What you drew" className={styles.drawn}>
      {items.map((item) => (
        <li key={item.id} className={styles.itemRow}>
          <Button onClick={() => onSelect(item.id)}>
            {itemName(item)}
            {countsAsWords(item) && ` · counts as ${countsAsWords(item)}`}
          </Button>
          {countsAsWords(item) && (
            <Button onClick={() => onAction({ type: "uncount", id: item.id })}>Words only</Button>
          )}
          <Button
            aria-label={`Delete ${itemName(item)}`}
            onClick={() => onAction({ type: "remove", id: item.id })}
          >
            <Trash2 size={20} aria-hidden="true" />
          </Button>
        </li>
      ))}
    </ul>
  );
}
