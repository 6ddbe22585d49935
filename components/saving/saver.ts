import { refused, type Answer, type Refusal } from "@/lib/base";

export interface Saved {
  /** What the next save is based on. */
  readonly revision: number;
}

/** What the store holds now. */
export interface Stored<C> extends Saved {
  readonly content: C;
}

/** Saves `content` if the store is still at revision `basedOn`. */
export type Save<C, V extends Saved = Saved> = (basedOn: number, content: C) => Promise<Answer<V>>;

export type SaveState<V extends Saved = Saved> =
  | { readonly kind: "saved"; readonly value: V | null }
  | { readonly kind: "saving" }
  | { readonly kind: "refused" | "collided"; readonly refusal: Refusal };

/** Somebody saved since this window read: the rooms' codes for it all end so. */
export function isCollision({ issues }: Refusal): boolean {
  return issues.some(({ code }) => code.endsWith("-changed-elsewhere"));
}

/**
 * One window's side of saving at a revision. A refused save keeps what was meant and is tried again with the next
 * change; one that collided with another window sends nothing more until the person has chosen.
 */
export class Saver<C, V extends Saved = Saved> {
  #state: SaveState<V> = { kind: "saved", value: null };
  #latest: C;
  #sent: C;
  #isDue = false;
  #adopts = false;
  #running: Promise<number | null> | null = null;
  readonly #listeners = new Set<() => void>();

  /** @param unreachable The sentence for a save that got no answer at all. */
  constructor(
    private revision: number,
    content: C,
    private readonly save: Save<C, V>,
    private readonly unreachable: string,
  ) {
    this.#latest = content;
    this.#sent = content;
  }

  readonly state = (): SaveState<V> => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Takes what is on the screen now; true when there is something new to send. */
  readonly change = (content: C): boolean => {
    if (content === this.#latest) return false;
    this.#latest = content;
    if (!this.#adopts) return true;
    this.#adopts = false;
    this.#sent = content;
    return false;
  };

  /**
   * Sends what is not sent yet, one save at a time, until nothing is left. Resolves to the saved revision, or null
   * when something was refused.
   */
  readonly flush = (): Promise<number | null> => this.#begin(false);

  /** Sends what is on the screen now, once and in any case: for a save that somebody asked for. */
  readonly send = (): Promise<number | null> => {
    this.#isDue = true;
    return this.#begin(true);
  };

  /** Another request on this revision collided. */
  readonly collide = (refusal: Refusal): void => this.#tell({ kind: "collided", refusal });

  /**
   * After the person chose what to keep: goes on from the revision that is in the store now. `asStored`: the next
   * change is what the store holds, so it need not be sent.
   */
  readonly settle = (storedRevision: number, asStored: boolean): void => {
    this.revision = storedRevision;
    this.#adopts = asStored;
    this.#isDue = !asStored;
    this.#tell(asStored ? { kind: "saved", value: null } : { kind: "saving" });
  };

  #tell(state: SaveState<V>): void {
    this.#state = state;
    this.#listeners.forEach((listener) => listener());
  }

  #begin(once: boolean): Promise<number | null> {
    this.#running ??= this.#run(once).finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  async #run(once: boolean): Promise<number | null> {
    while (this.#state.kind !== "collided" && (this.#isDue || this.#sent !== this.#latest)) {
      const sending = this.#latest;
      this.#tell({ kind: "saving" });
      const answer = await this.save(this.revision, sending).catch(() =>
        refused("unreachable", this.unreachable),
      );
      if (!answer.ok) {
        this.#tell({ kind: isCollision(answer) ? "collided" : "refused", refusal: answer });
        return null;
      }
      this.revision = answer.value.revision;
      this.#sent = sending;
      this.#isDue = false;
      if (once || sending === this.#latest) this.#tell({ kind: "saved", value: answer.value });
      if (once) break;
    }
    return this.#state.kind === "collided" ? null : this.revision;
  }
}
