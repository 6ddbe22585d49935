import { createHash } from "node:crypto";
import { emptyDrawing, type Mark } from "@/lib/marks";
import { newId } from "@/lib/store";
import type { Written } from "./book";

/** What came of one kind of request. */
export interface Timed {
  readonly times: number[];
  readonly failed: string[];
}

export const kinds = ["list", "make", "upload", "open", "save"] as const;
export type Figures = Readonly<Record<(typeof kinds)[number], Timed>>;

const nothing = (): Timed => ({ times: [], failed: [] });
export const noFigures = (): Figures => ({
  list: nothing(),
  make: nothing(),
  upload: nothing(),
  open: nothing(),
  save: nothing(),
});

/** Saves while one bead is marked: the workbench saves after each mark. */
const MARKS = 4;
/** Rests of one bead: its pace is divided among them. */
export const RESTS = MARKS + 2;

/** One of those who work: how they ask, and what comes of it. */
export interface Person {
  /** An answer whatever its status, read whole; throws where none came. */
  readonly ask: (where: string, init?: RequestInit) => Promise<Response>;
  readonly figures: Figures;
  /** What this person was said yes to. */
  readonly book: Written[];
  /** Another photo each time. */
  readonly photo: () => Buffer;
  /** Between two things they do: the pace divided among them, half of it up to one and a half. False: the time is up. */
  readonly goesOn: () => Promise<boolean>;
}

async function timed(into: Timed, ask: () => Promise<Response>): Promise<Response | null> {
  const began = performance.now();
  try {
    const answer = await ask();
    if (answer.ok) into.times.push(performance.now() - began);
    else into.failed.push(`${answer.status} ${(await answer.text()).slice(0, 200)}`);
    return answer.ok ? answer : null;
  } catch (error) {
    into.failed.push(String(error));
    return null;
  }
}

interface Bead {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly content: { readonly title: string };
}

const mark = (i: number): Mark => ({
  id: `m${i}`,
  imperfection: "undercut",
  shape: { kind: "line", points: [0, 1, 2, 3].map((j) => ({ x: 400 + 300 * j, y: 500 + 40 * i + 9 * j })) },
  place: "upper-toe",
  stretch: "run",
  patterns: ["continuous"],
  gauge: [],
  note: "",
});

const json = { "content-type": "application/json" };

/** Looks at the list, makes a bead, photographs it, opens it and marks it, with a save after each mark. */
export async function oneBead(person: Person): Promise<void> {
  const { ask, figures, goesOn } = person;
  await timed(figures.list, () => ask("/"));
  if (!(await goesOn())) return;
  const written: Written = { id: newId(), number: null, saves: [], sha256: null };
  // Before it is sent: what came about without an answer is somebody's too.
  person.book.push(written);
  const body = JSON.stringify({ id: written.id, title: "At the bench" });
  const made = await timed(figures.make, () => ask("/api/beads", { method: "POST", headers: json, body }));
  if (made === null) return;
  written.number = ((await made.json()) as Bead).number;
  if (!(await goesOn())) return;
  const photoId = await photographed(person, written);
  if (photoId === null) return;
  await timed(figures.open, () => ask(`/beads/${written.id}`));
  await marked(person, written, photoId);
}

/** Id of the photo; null: it was not taken. The id is the sender's own, so that it may be sent again. */
async function photographed({ ask, figures, photo }: Person, written: Written): Promise<string | null> {
  const bytes = photo();
  const init = { method: "POST", headers: { "content-type": "image/jpeg" }, body: new Uint8Array(bytes) };
  const id = newId();
  const where = `/api/beads/${written.id}/photos?id=${id}`;
  if (!(await timed(figures.upload, () => ask(where, init)))) return null;
  written.sha256 = createHash("sha256").update(bytes).digest("hex");
  return id;
}

async function marked({ ask, figures, goesOn }: Person, written: Written, photoId: string): Promise<void> {
  const where = `/api/beads/${written.id}`;
  let bead = (await (await ask(where)).json()) as Bead;
  for (let marks = 1; marks <= MARKS; marks += 1) {
    if (!(await goesOn())) return;
    const drawing = { ...emptyDrawing, marks: Array.from({ length: marks }, (_, i) => mark(i)) };
    const title = `${marks} marks ${newId()}`;
    const content = { ...bead.content, title, photos: [{ id: photoId, role: "face", drawing }] };
    const body = JSON.stringify({ basedOn: bead.revision, content });
    const put = (): Promise<Response> => ask(where, { method: "PUT", headers: json, body });
    const answer = await timed(figures.save, put);
    if (answer === null) return;
    // Sent again because an answer was lost, it is told the revision that the first one came to.
    const { revision } = (await answer.json()) as Bead;
    if (revision !== bead.revision + 1)
      return void figures.save.failed.push(`revision ${revision} upon ${bead.revision}`);
    bead = { ...bead, revision };
    written.saves.push({ revision, title, marks });
  }
}
