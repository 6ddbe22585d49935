/** What a look at all records says, line by line (`POST /api/log/verify`), and what is known of it at each moment. */

export interface Looked {
  readonly part: string;
  readonly looked: number;
  readonly of: number;
}

type Line =
  | { readonly says: "waiting" }
  | ({ readonly says: "looking"; readonly place: number; readonly parts: number } & Looked)
  | { readonly says: "found"; readonly findings: readonly string[]; readonly remarks: readonly string[] }
  | { readonly says: "broken"; readonly message: string }
  | {
      readonly says: "ended";
      readonly looked: Readonly<Record<string, number>>;
      readonly head: string | null;
      readonly findings: number;
    };

/** - `fits`, `does-not-fit`: it came to its end; no other state says anything of the whole. */
export interface Look {
  readonly state: "waiting" | "looking" | "fits" | "does-not-fit" | "stopped" | "broken" | "refused";
  /** Parts that it began, in their order; the last one is being looked at. */
  readonly parts: readonly Looked[];
  readonly place: number;
  readonly most: number;
  /** The first of what was found, and how many there are in all. */
  readonly findings: readonly string[];
  readonly found: number;
  readonly remarks: readonly string[];
  /** What was counted, once it ended. */
  readonly counts: Readonly<Record<string, number>> | null;
  readonly head: string | null;
  /** Why it broke off or was refused, where somebody said it. */
  readonly why: string | null;
}

/** Sentences kept for the screen: a database that was changed throughout has one for each record. */
export const MOST_SHOWN = 500;

export const begun: Look = {
  ...{ state: "waiting", parts: [], place: 0, most: 0 },
  ...{ findings: [], found: 0, remarks: [], counts: null, head: null, why: null },
};

export const isGoing = ({ state }: Look): boolean => state === "waiting" || state === "looking";

/** What is known after one more line. */
export function heard(look: Look, line: string): Look {
  if (!isGoing(look)) return look;
  const said = JSON.parse(line) as Line;
  switch (said.says) {
    case "waiting":
      return look;
    case "looking":
      return { ...look, state: "looking", ...movedTo(look, said), place: said.place, most: said.parts };
    case "found":
      return {
        ...look,
        found: look.found + said.findings.length,
        findings: [...look.findings, ...said.findings].slice(0, MOST_SHOWN),
        remarks: [...look.remarks, ...said.remarks].slice(0, MOST_SHOWN),
      };
    case "broken":
      return { ...look, state: "broken", why: said.message };
    case "ended": {
      // Where a line was lost on the way, not everything that was found is here.
      if (said.findings !== look.found) return { ...look, state: "broken" };
      const state = said.findings === 0 ? "fits" : "does-not-fit";
      return { ...look, state, counts: said.looked, head: said.head };
    }
  }
}

function movedTo({ parts }: Look, { part, looked, of }: Looked): Pick<Look, "parts"> {
  const before = parts.at(-1)?.part === part ? parts.slice(0, -1) : parts;
  return { parts: [...before, { part, looked, of }] };
}

/** Nothing more comes: because somebody stopped it, or for whatever reason. Only what ended before stays what it was. */
export const closed = (look: Look, state: "stopped" | "broken"): Look =>
  isGoing(look) ? { ...look, state } : look;

/**
 * Reads to the last line and hands on what is known after each. Resolves when nothing more comes; never throws: a connection
 * that breaks is a look that broke off.
 */
export async function readLook(
  answer: () => Promise<Response>,
  show: (look: Look) => void,
  signal: AbortSignal,
): Promise<void> {
  let look = begun;
  const know = (next: Look): void => show((look = next));
  try {
    const got = await answer();
    if (!got.ok || got.body === null) return know({ ...look, state: "refused", why: await messageOf(got) });
    for await (const line of linesIn(got.body)) if (!signal.aborted) know(heard(look, line));
    know(closed(look, "broken"));
  } catch {
    know(closed(look, signal.aborted ? "stopped" : "broken"));
  }
}

async function* linesIn(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = body.pipeThrough(new TextDecoderStream() as TransformStream<Uint8Array, string>).getReader();
  for (let kept = ""; ;) {
    const { value, done } = await reader.read();
    // What has no end of line was cut off.
    if (done) return;
    const lines = (kept + value).split("\n");
    kept = lines.pop() ?? "";
    yield* lines;
  }
}

async function messageOf(answer: Response): Promise<string | null> {
  try {
    const { issues } = (await answer.json()) as { issues: readonly { message?: string }[] };
    return issues[0]?.message ?? null;
  } catch {
    return null;
  }
}
