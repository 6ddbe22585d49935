import type { Held, Saved } from "@/components/saving";
import type { BeadContent, PhotoFacts, PhotoRole } from "@/lib/assess";
import type { Answer } from "@/lib/base";
import { deviceStore, type DeviceStore } from "./device-store";
import { keyOf, newId, unsentOf, type KeptBead, type KeptPhoto } from "./kept";
import { mayBringOldPages } from "./old-pages";
import { sendKept, type Doors, type MadeBead, type TakenPhoto, type Told } from "./send-kept";
import { openingOf, takeUp, type PageBead } from "./take-up";
import { windowsHere, type Windows } from "./window-lock";

/** What this window knows of its bead beside what is on the screen. */
export interface KeeperState {
  readonly isNew: boolean;
  readonly number: number | null;
  /** As in `KeptBead`. */
  readonly madeAs: string | null;
  /** Waiting here, those that were refused included. */
  readonly photos: readonly KeptPhoto[];
  /** false: this browser keeps nothing, so unsent work is on this screen alone. */
  readonly keeps: boolean;
}

/** Told to the screen. */
export interface KeeperNews {
  readonly made: (bead: MadeBead) => void;
  readonly taken: (kept: KeptPhoto, photo: TakenPhoto) => void;
  readonly refused: (kept: KeptPhoto, why: string) => void;
}

interface Whose {
  readonly beadId: string;
  readonly by: string;
  readonly isNew: boolean;
  readonly number: number | null;
}

/** One window's bead on this device: what it holds is written at each gesture and is gone once the store has it. */
export class BeadKeeper {
  #state: KeeperState;
  #store: DeviceStore | null = null;
  #key = "";
  #letGo: () => void = () => undefined;
  #isKept = false;
  #photos: readonly PhotoFacts[] = [];
  /** What is still to be written; writes that come while one is under way become the next one. */
  #due: KeptBead | "drop" | null = null;
  #writing: Promise<void> | null = null;
  readonly #listeners = new Set<() => void>();

  constructor(
    private readonly whose: Whose,
    private readonly keepsCopies: () => boolean = mayBringOldPages,
    private readonly openStore: () => Promise<DeviceStore | null> = deviceStore,
    private readonly windows: Windows = windowsHere,
  ) {
    this.#state = { isNew: whose.isNew, number: whose.number, madeAs: null, photos: [], keeps: true };
  }

  readonly state = (): KeeperState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Looks for what gone windows left behind and makes it this window's own; null: the page is right. */
  async open(
    page: PageBead,
  ): Promise<(Pick<PageBead, "content" | "photos"> & { held: Held<BeadContent> }) | null> {
    const store = await this.openStore();
    this.#store = store;
    if (!store) return this.#tell({ keeps: false });
    const { beadId, by } = this.whose;
    this.#key = keyOf(beadId, this.windows.windowId(newId));
    // Before anything is looked for: from now on nobody in this window sends what others left of this bead.
    this.#letGo = this.windows.holdWork(this.#key);
    const [beads, photos] = await Promise.all([store.beadsOf(beadId), store.photosOf(beadId)]);
    this.#tell({ photos: photos.filter((photo) => photo.by === by) });
    const left = await this.#leftOf(beads.filter((bead) => bead.by === by));
    const { taken: found, done } = openingOf(page, left);
    for (const key of done) await store.drop("beads", key);
    const taken = found && (await this.#takeOver(store, found));
    if (!taken) return null;
    this.#isKept = true;
    const { isNew, number } = taken;
    // The window was gone before it heard that the record was made; the page shows what it was made as.
    const madeAs = taken.madeAs ?? (isNew && !this.#state.isNew ? page.content.title : null);
    this.#tell({ isNew: this.#state.isNew && isNew, number: this.#state.number ?? number, madeAs });
    return { ...takeUp(page, taken), held: taken.held };
  }

  async #leftOf(beads: readonly KeptBead[]): Promise<readonly KeptBead[]> {
    const isLeft = ({ key, at }: KeptBead) =>
      key === this.#key || this.windows.withLeftWork(key, Date.now() - at, () => Promise.resolve(true));
    const left = await Promise.all(beads.map(isLeft));
    return beads.filter((_, i) => left[i]);
  }

  /** Kept off others meanwhile: what a sender has under way must not be taken from under it. */
  #takeOver(store: DeviceStore, { key, at }: KeptBead): Promise<KeptBead | null> {
    const move = () => store.takeOver(key, this.#key);
    return key === this.#key ? move() : this.windows.withLeftWork(key, Date.now() - at, move);
  }

  /** Writes down what the screen holds now; at once, or as soon as the write before it has ended. */
  keep(screen: Held<BeadContent>, photos: readonly PhotoFacts[]): void {
    const { isNew, number, madeAs, photos: waiting } = this.#state;
    // The store leaves out what is drawn on a photo that it does not have.
    const held = { ...screen, isSent: screen.isSent && waiting.length === 0 };
    this.#photos = photos;
    if (!this.#store || (held.isSent && !this.#isKept)) return;
    const { beadId, by } = this.whose;
    this.#isKept = !held.isSent || this.keepsCopies();
    const bead = {
      key: this.#key,
      beadId,
      by,
      isNew,
      number,
      madeAs,
      held,
      photos,
      at: Date.now(),
      stuck: null,
    };
    this.#due = this.#isKept ? bead : "drop";
    this.#writing ??= this.#writeAll().finally(() => {
      this.#writing = null;
    });
  }

  async #writeAll(): Promise<void> {
    while (this.#due && this.#store) {
      const due = this.#due;
      this.#due = null;
      const write = due === "drop" ? this.#store.drop("beads", this.#key) : this.#store.putBead(due);
      await write.catch(() => this.#tell({ keeps: false }));
    }
  }

  /** Resolves when everything said so far lies on the device. */
  readonly settled = async (): Promise<void> => {
    while (this.#writing) await this.#writing;
  };

  /** Keeps a photo until it is sent. */
  async addPhoto(file: File, role: PhotoRole, size: KeptPhoto["size"]): Promise<KeptPhoto> {
    const { beadId, by } = this.whose;
    const photo = {
      id: newId(),
      beadId,
      by,
      role,
      name: file.name,
      file,
      size,
      at: Date.now(),
      refused: null,
    };
    this.#tell({ photos: [...this.#state.photos, photo] });
    await this.#store?.putPhoto(photo).catch(() => this.#tell({ keeps: false }));
    return photo;
  }

  async dropPhoto(id: string): Promise<void> {
    this.#tell({ photos: this.#state.photos.filter((photo) => photo.id !== id) });
    await this.#store?.drop("photos", id).catch(() => undefined);
  }

  async refusePhoto(photo: KeptPhoto, refused: string): Promise<void> {
    const other = { ...photo, refused };
    this.#tell({ photos: this.#state.photos.map((one) => (one.id === photo.id ? other : one)) });
    await this.#store?.putPhoto(other).catch(() => undefined);
  }

  /**
   * One round of sending; `news` is told after this device knows. Nothing goes out before it is written down that it
   * does: whoever takes this up after a kill must know what may have arrived.
   */
  async send(basedOn: number, content: BeadContent, doors: Doors, news: KeeperNews): Promise<Answer<Saved>> {
    await this.settled();
    const { isNew, madeAs } = this.#state;
    const { beadId } = this.whose;
    const photos = () => this.#state.photos;
    return sendKept({ beadId, isNew, madeAs, basedOn, content, photos }, doors, this.#told(news));
  }

  #told(news: KeeperNews): Told {
    return {
      made: (bead) => {
        this.#tell({ isNew: false, number: bead.number, madeAs: bead.title });
        news.made(bead);
      },
      taken: async (kept, photo) => {
        news.taken(kept, photo);
        await this.dropPhoto(kept.id);
      },
      refused: async (kept, why) => {
        await this.refusePhoto(kept, why);
        news.refused(kept, why);
      },
    };
  }

  readonly unsent = (isSent: boolean) => unsentOf(isSent, this.#state.photos);

  /** The window goes; what it still holds may be taken up by another. */
  close(held: Held<BeadContent>): void {
    this.keep(held, this.#photos);
    void this.settled().finally(this.#letGo);
  }

  #tell(part: Partial<KeeperState>): null {
    this.#state = { ...this.#state, ...part };
    this.#listeners.forEach((listener) => listener());
    return null;
  }
}
