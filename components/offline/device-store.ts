import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import type { KeptBead, KeptPhoto } from "./kept";

interface Schema extends DBSchema {
  beads: { key: string; value: KeptBead; indexes: { beadId: string } };
  photos: { key: string; value: KeptPhoto; indexes: { beadId: string } };
}
type Table = "beads" | "photos";

/** Written to the disk before a write counts as done: an empty battery must not take it along. */
const strict = { durability: "strict" } as const;

/** What this device keeps. Each write stands alone and is whole or not at all. */
export class DeviceStore {
  private constructor(private readonly db: IDBPDatabase<Schema>) {}

  /** Rejects where the browser keeps nothing: a private window, a full disk, an old browser. */
  static async open(name = "toeline"): Promise<DeviceStore> {
    const db = await openDB<Schema>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore("beads", { keyPath: "key" }).createIndex("beadId", "beadId");
        fresh.createObjectStore("photos", { keyPath: "id" }).createIndex("beadId", "beadId");
      },
    });
    return new DeviceStore(db);
  }

  readonly beads = (): Promise<readonly KeptBead[]> => this.db.getAll("beads");
  readonly beadsOf = (beadId: string): Promise<readonly KeptBead[]> =>
    this.db.getAllFromIndex("beads", "beadId", beadId);
  readonly photos = (): Promise<readonly KeptPhoto[]> => this.db.getAll("photos");
  readonly photosOf = (beadId: string): Promise<readonly KeptPhoto[]> =>
    this.db.getAllFromIndex("photos", "beadId", beadId);

  readonly putBead = (bead: KeptBead): Promise<void> => this.#write("beads", (table) => table.put(bead));
  readonly putPhoto = (photo: KeptPhoto): Promise<void> => this.#write("photos", (table) => table.put(photo));
  readonly drop = (table: Table, key: string): Promise<void> =>
    this.#write(table, (from) => from.delete(key));

  readonly bead = (key: string): Promise<KeptBead | undefined> => this.db.get("beads", key);

  /** Writes over what lies here, and nothing where that was taken over or sent meanwhile: it would come back to life. */
  readonly changeBead = async (bead: KeptBead): Promise<void> => {
    const tx = this.db.transaction("beads", "readwrite", strict);
    if ((await tx.store.count(bead.key)) > 0) void tx.store.put(bead);
    await tx.done;
  };

  /**
   * The work of a gone window becomes that of another one, in one step: at no moment is it nowhere or twice. As it lies
   * here now; null where somebody else was faster.
   */
  readonly takeOver = async (from: string, key: string): Promise<KeptBead | null> => {
    const tx = this.db.transaction("beads", "readwrite", strict);
    const bead = await tx.store.get(from);
    if (bead && from !== key) {
      void tx.store.delete(from);
      void tx.store.put({ ...bead, key });
    }
    await tx.done;
    return bead ? { ...bead, key } : null;
  };

  async #write<T extends Table>(
    table: T,
    act: (store: { put(value: Schema[T]["value"]): unknown; delete(key: string): unknown }) => unknown,
  ): Promise<void> {
    const tx = this.db.transaction(table, "readwrite", strict);
    await Promise.all([act(tx.store as never), tx.done]);
  }
}

let opened: Promise<DeviceStore | null> | null = null;

/** This device's store, opened once for the page; null where the browser keeps nothing. */
export function deviceStore(): Promise<DeviceStore | null> {
  opened ??= DeviceStore.open().catch(() => null);
  return opened;
}
