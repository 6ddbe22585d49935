import type { MessagePort } from "node:worker_threads";
import { inSite, type Site } from "@/lib/sites";
import type { Answered, Asked, Done, Piece, Work } from "./words";

const encoder = new TextEncoder();

/** Bytes that may be handed over whole; those that are part of something larger are copied out of it. */
function own(piece: Piece): Uint8Array<ArrayBuffer> {
  if (typeof piece === "string") return encoder.encode(piece);
  const isWhole = piece.buffer instanceof ArrayBuffer && piece.byteLength === piece.buffer.byteLength;
  // A Buffer of Node's own pool shares its memory with others; handing that over would take it from them.
  return isWhole && !Buffer.isBuffer(piece) ? (piece as Uint8Array<ArrayBuffer>) : new Uint8Array(piece);
}

/** A work that is open: its pieces, and the site for which each of them is made. */
interface Open {
  readonly parts: Done<unknown>["parts"];
  readonly site: Site | null;
}

const within = <T>(site: Site | null, work: () => T): T => (site === null ? work() : inSite(site, work));

/** Answers at a port what is asked there (`asideThread`), many works side by side, each a piece at a time. */
export function serveWorks(port: MessagePort, works: Readonly<Record<string, Work<never, unknown>>>): void {
  const open = new Map<number, Open>();
  const answer = async (asked: Exclude<Asked, { what: "stop" }>): Promise<Answered> => {
    const { id } = asked;
    if (asked.what === "do") {
      const { name, input, site } = asked;
      const { head, parts } = await within(site, () => works[name]!(input as never));
      open.set(id, { parts, site });
      return { id, what: "head", head };
    }
    const one = open.get(id);
    const next = one && (await within(one.site, () => one.parts.next()));
    if (!next || next.done) open.delete(id);
    return next && !next.done ? { id, what: "piece", piece: own(next.value) } : { id, what: "end" };
  };
  port.on("message", (asked: Asked) => {
    if (asked.what === "stop") {
      const one = open.get(asked.id);
      if (one) void within(one.site, () => one.parts.return?.())?.catch(() => undefined);
      return void open.delete(asked.id);
    }
    answer(asked).then(
      (said) => port.postMessage(said, said.what === "piece" ? [said.piece.buffer as ArrayBuffer] : []),
      (error: unknown) => {
        open.delete(asked.id);
        const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
        port.postMessage({ id: asked.id, what: "failed", why } satisfies Answered);
      },
    );
  });
}
