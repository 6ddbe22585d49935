import type { Site } from "@/lib/sites";

/** What an export is made of: text, or bytes. */
export type Piece = string | Uint8Array;

/** What a work comes to: what is known before its first piece, and its pieces, made when they are asked for. */
export interface Done<H> {
  readonly head: H;
  readonly parts: AsyncIterator<Piece, void, void>;
}

/** Something that is done aside. What it is given and its head travel between threads: data only, no functions. */
export type Work<I, H> = (input: I) => Promise<Done<H>>;

/**
 * What the serving thread says to the one aside, each of one piece of work. `site`: for which it is done, because nothing of
 * the request reaches the other thread by itself; null: there is only one.
 */
export type Asked =
  | {
      readonly id: number;
      readonly what: "do";
      readonly name: string;
      readonly input: unknown;
      readonly site: Site | null;
    }
  | { readonly id: number; readonly what: "more" }
  | { readonly id: number; readonly what: "stop" };

/** The answer to each "do" and "more". */
export type Answered =
  | { readonly id: number; readonly what: "head"; readonly head: unknown }
  | { readonly id: number; readonly what: "piece"; readonly piece: Uint8Array }
  | { readonly id: number; readonly what: "end" }
  | { readonly id: number; readonly what: "failed"; readonly why: string };
