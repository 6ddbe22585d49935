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
  /** `after`: what the try before came to, where this one is to mend it. */
  | { readonly kind: "saving"; readonly after: Refusal | null }
  | { readonly kind: "refused" | "collided"; readonly refusal: Refusal };

/** What the last try came to, also while the next one is under way; null: it was taken, or there was none. */
export function refusalOf(state: SaveState): Refusal | null {
  if (state.kind === "saved") return null;
  return state.kind === "saving" ? state.after : state.refusal;
}

/** All that has to survive the window: enough to go on saving from another one. */
export interface Held<C> {
  /** The revision of the store that `content` grew from. */
  readonly basedOn: number;
  readonly content: C;
  /** Went out and got no answer, so the store may have it as the next revision; null: nothing is in doubt. */
  readonly tried: C | null;
  /** The store has acknowledged `content`. */
  readonly isSent: boolean;
}

/** Somebody saved since this window read: the rooms' codes for it all end so. */
export function isCollision({ issues }: Refusal): boolean {
  return issues.some(({ code }) => code.endsWith("-changed-elsewhere"));
}

const awayCodes: ReadonlySet<string> = new Set([
  "unreachable",
  "store-full",
  "store-unusable",
  "photo-cut-off",
  "photo-disk-full",
  "photo-store-unusable",
]);

/** Nobody answered, or the store could not write just now: the same save may well be taken later. */
export function isAway({ issues }: Refusal): boolean {
  return issues.some(({ code }) => awayCodes.has(code));
}

/**
 * One window's side of saving at a revision. A refused save keeps what was meant and is tried again with the next
 * change; one that collided with another window sends nothing more until the person has chosen. What got no answer may
 * have arrived all the same: it goes out again, word for word, before anything newer does, and a store that holds
 * exactly that already answers as if it had just been saved.
 */
export class Saver<C, V extends Saved = Saved> {
  #state: SaveState<V> = { kind: "saved", value: null };
  #latest: C;
  #sent: C;
  /** How often something was to go out in any case, and how much of that went. */
  #asked = 0;
  #answered = 0;
  #adopts = false;
  #tried: C | null = null;
  #opening: Promise<unknown> | null = null;
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

  readonly held = (): Held<C> => ({
    basedOn: this.revision,
    content: this.#latest,
    tried: this.#tried,
    isSent: !this.#isOpen(),
  });

  /** Nothing goes out before this has ended: what another window left behind may still be looked for. */
  readonly wait = (opening: Promise<unknown>): void => {
    this.#opening = opening;
  };

  /** Goes on where a window that is gone stopped. The next change is what it held, so that alone is nothing new. */
  readonly resume = ({ basedOn, content, tried, isSent }: Held<C>): void => {
    this.revision = basedOn;
    // At once, not with the screen: what is asked for `held` meanwhile must not be what stood there before.
    this.#latest = content;
    this.#sent = content;
    this.#tried = tried;
    this.#adopts = true;
    if (isSent) return;
    this.touch();
    this.#tell({ kind: "saving", after: null });
  };

  /** What is on the screen has to go out once more: the store could not take all of it before. */
  readonly touch = (): void => {
    this.#asked += 1;
  };

  /**
   * Sends what is not sent yet, one save at a time, until nothing is left. Resolves to the saved revision, or null
   * when something was refused.
   */
  readonly flush = (): Promise<number | null> => this.#begin(false);

  /** Sends what is on the screen now, once and in any case: for a save that somebody asked for. */
  readonly send = (): Promise<number | null> => {
    this.touch();
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
    this.#tried = null;
    if (asStored) this.#answered = this.#asked;
    else this.touch();
    this.#tell(asStored ? { kind: "saved", value: null } : { kind: "saving", after: null });
  };

  #tell(state: SaveState<V>): void {
    this.#state = state;
    this.#listeners.forEach((listener) => listener());
  }

  #isOpen(): boolean {
    return this.#asked !== this.#answered || this.#sent !== this.#latest;
  }

  #begin(once: boolean): Promise<number | null> {
    this.#running ??= this.#run(once).finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  async #run(once: boolean): Promise<number | null> {
    if (this.#opening) await this.#opening;
    this.#opening = null;
    while (this.#state.kind !== "collided" && this.#isOpen()) {
      const sending = (once ? null : this.#tried) ?? this.#latest;
      const asked = this.#asked;
      const answer = await this.#sendOne(sending, once);
      if (!answer.ok) {
        this.#tell({ kind: isCollision(answer) ? "collided" : "refused", refusal: answer });
        return null;
      }
      this.revision = answer.value.revision;
      this.#sent = sending;
      if (once || sending === this.#latest) this.#answered = asked;
      if (once || !this.#isOpen()) this.#tell({ kind: "saved", value: answer.value });
      if (once) break;
    }
    return this.#state.kind === "collided" ? null : this.revision;
  }

  async #sendOne(sending: C, once: boolean): Promise<Answer<V>> {
    const { kind } = this.#state;
    this.#tried = once ? null : sending;
    this.#tell({ kind: "saving", after: kind === "refused" ? this.#state.refusal : null });
    const answer = await this.save(this.revision, sending).catch(() =>
      refused("unreachable", this.unreachable),
    );
    if (answer.ok || !isAway(answer)) this.#tried = null;
    return answer;
  }
}
