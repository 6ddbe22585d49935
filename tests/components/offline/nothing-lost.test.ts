import "fake-indexeddb/auto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BeadKeeper } from "@/components/offline/bead-keeper";
import { DeviceStore } from "@/components/offline/device-store";
import { goOn } from "@/components/offline/go-on";
import type { KeptPhoto } from "@/components/offline/kept";
import type { Doors } from "@/components/offline/send-kept";
import { sendLeft } from "@/components/offline/send-left";
import type { PageBead } from "@/components/offline/take-up";
import type { Windows } from "@/components/offline/window-lock";
import { Saver, type Saved } from "@/components/saving";
import { emptyBeadContent, mergeContent, newPhotoContent, type BeadContent } from "@/lib/assess";
import { canonicalJson, ok, refused } from "@/lib/base";
import type { Mark } from "@/lib/marks";

const PHOTO = "ppppppppppp2";
const blank: BeadContent = { ...emptyBeadContent, photos: [newPhotoContent(PHOTO, "face")] };
const facts = { id: PHOTO, sha256: "a".repeat(64), widthPx: 100, heightPx: 80 };

/** What a gesture leaves: one mark with an id of its own. */
const withMark = (content: BeadContent, id: string): BeadContent => ({
  ...content,
  photos: content.photos.map((photo) => ({
    ...photo,
    drawing: { ...photo.drawing, marks: [...photo.drawing.marks, { id } as Mark] },
  })),
});
const marksOf = (content: BeadContent): readonly string[] =>
  content.photos.flatMap(({ drawing }) => drawing.marks.map(({ id }) => id));

/** The store as tests/lib/beads hold it to be: saves at its revision, and what comes twice is there once. */
class Store {
  isMade: boolean;
  revision = 1;
  content: BeadContent = blank;
  /** Everything it ever held: nothing that was replaced was lost as long as it stands here. */
  readonly history: BeadContent[] = [];
  readonly photos: string[] = [];
  line: "up" | "down" | "loses answers" = "up";
  constructor(isNew: boolean) {
    this.isMade = !isNew;
  }
  readonly #through = async <T>(act: () => T): Promise<T> => {
    await Promise.resolve();
    if (this.line === "down") throw new Error("no line");
    const answer = act();
    await Promise.resolve();
    if (this.line === "loses answers") throw new Error("no answer");
    return answer;
  };
  readonly #away = () => refused("unreachable", "No answer.");
  readonly doors: Doors = {
    make: () =>
      this.#through(() => {
        this.isMade = true;
        return ok({ number: 7, title: "Bead 7" });
      }).catch(this.#away),
    sendPhoto: (photo) =>
      this.#through(() => {
        if (!this.isMade) throw new Error("a photo for a bead that is not there");
        if (photo.name === "torn.jpg") return refused("photo-damaged", "Torn.");
        if (!this.photos.includes(photo.id)) this.photos.push(photo.id);
        return ok({ photo: { ...facts, id: photo.id }, said: [] });
      }).catch(this.#away),
    save: (_, basedOn, content) =>
      this.#through(() => {
        if (!this.isMade) throw new Error("a save for a bead that is not there");
        if (basedOn !== this.revision) {
          if (canonicalJson(content) !== canonicalJson(this.content))
            return refused("bead-changed-elsewhere", "Changed elsewhere.");
          return ok({ revision: this.revision });
        }
        this.content = content;
        this.history.push(content);
        return ok({ revision: (this.revision += 1) });
      }).catch(this.#away),
  };
}

/** The windows of one device: who is alive, as the browser's locks say it. */
class Device {
  readonly alive = new Set<string>();
  /** Who has the lock of a gone window's work: the next one waits for it. */
  readonly #turns = new Map<string, Promise<unknown>>();
  #count = 0;
  /** `keys`: where a window notes what it holds. */
  readonly windows = (keys: string[] = []): Windows => ({
    windowId: () => `w${(this.#count += 1)}`,
    holdWork: (key) => {
      keys.push(key);
      this.alive.add(key);
      return () => this.alive.delete(key);
    },
    withLeftWork: async (key, _, work) => {
      const before = this.#turns.get(key) ?? Promise.resolve();
      const turn = before.then(() => (this.alive.has(key) ? null : work()));
      this.#turns.set(
        key,
        turn.catch(() => null),
      );
      return turn;
    },
  });
}

/** What a killed window had begun comes to nothing it would ever hear of. */
function until<T extends object>(isDead: () => boolean, living: T): T {
  const never = new Promise<never>(() => undefined);
  return new Proxy(living, {
    get: (from, name) => {
      const part: unknown = Reflect.get(from, name);
      if (typeof part !== "function") return part;
      return async (...given: unknown[]) => {
        if (isDead()) return never;
        const answer: unknown = await part.apply(from, given);
        return isDead() ? never : answer;
      };
    },
  });
}

/** One window with its bead, as the workbench wires it. */
class Win {
  content: BeadContent;
  isDead = false;
  readonly keys: string[] = [];
  readonly keeper: BeadKeeper;
  readonly saver: Saver<BeadContent, Saved>;
  constructor(
    readonly store: Store,
    device: Device,
    private readonly page: PageBead,
    isNew: boolean,
    disk: DeviceStore,
    copies: boolean,
  ) {
    this.content = page.content;
    const number = isNew ? null : 7;
    this.keeper = new BeadKeeper(
      { beadId: "b", by: "owner", isNew, number },
      () => copies,
      async () => until(() => this.isDead, disk),
      device.windows(this.keys),
    );
    this.saver = new Saver<BeadContent, Saved>(
      page.revision,
      page.content,
      (basedOn, content) =>
        this.keeper.send(
          basedOn,
          content,
          until(() => this.isDead, store.doors),
          {
            made: () => undefined,
            taken: () => undefined,
            refused: (photo) => void this.keeper.dropPhoto(photo.id),
          },
        ),
      "No answer.",
    );
    this.saver.subscribe(() => this.#keep());
  }
  #keep() {
    if (!this.isDead) this.keeper.keep(this.saver.held(), [facts]);
  }
  show(content: BeadContent) {
    this.content = content;
    this.saver.change(content);
    this.#keep();
  }
  async open() {
    const opened = await this.keeper.open(this.page);
    if (opened) goOn(opened, this.saver, { onTakenUp: (content) => this.show({ ...content }) });
    if (this.keeper.unsent(true).photos > 0) this.saver.touch();
  }
  /** Somebody reads why a photo was not taken, and goes on without it. */
  async leaveOutRefused() {
    for (const { id, refused } of this.keeper.state().photos)
      if (refused !== null) await this.keeper.dropPhoto(id);
    this.#keep();
    await this.keeper.settled();
  }
  /** The tab is killed: nothing is written and nothing sent after it. */
  die(device: Device) {
    this.isDead = true;
    for (const key of this.keys) device.alive.delete(key);
  }
}

const act = fc.record({
  at: fc.nat({ max: 1 }),
  /** How many turns of the machine later another window begins to send. */
  later: fc.nat({ max: 20 }),
  does: fc.constantFrom(
    ...(["mark", "mark", "photo", "torn photo", "save", "kill", "open", "choose", "in background"] as const),
    "open while another sends",
    ...(["cut", "mend", "lose answers", "old page"] as const),
  ),
});
async function turns(count: number): Promise<void> {
  for (let turn = 0; turn < count; turn += 1) await new Promise((done) => setImmediate(done));
}
type Act = { readonly at: number; readonly later: number; readonly does: string };

/**
 * Runs the acts on up to two windows of one device, then lets everything calm down.
 *
 * @param isKept Whether a page that came over the line is the one that is shown without it, as the worker has it; else it
 *   may be any older one.
 */
async function run(acts: readonly Act[], isNew: boolean, name: string, isKept = false) {
  const [store, device, disk] = [new Store(isNew), new Device(), await DeviceStore.open(name)];
  const windows: (Win | null)[] = [null, null];
  const safe: string[] = [];
  const photos: string[] = [];
  let count = 0;
  let oldPage: PageBead = { revision: isNew ? 0 : 1, content: blank, photos: [facts] };
  const page = (): PageBead =>
    store.isMade ? { revision: store.revision, content: store.content, photos: [facts] } : oldPage;
  const open = async (from: PageBead) => {
    const win = new Win(store, device, from, !store.isMade || from.revision === 0, disk, true);
    await win.open();
    return win;
  };
  const openAt = async (at: number, from: PageBead) => {
    windows[at] = await open(from);
  };
  const background = async () => {
    for (const bead of await disk.beads())
      if (!bead.held.isSent && bead.stuck === null)
        await device
          .windows()
          .withLeftWork(bead.key, 0, () => sendLeft(disk, bead.key, store.doors, () => true));
  };
  let collisions = 0;
  const choose = (win: Win) => {
    if (win.saver.state().kind !== "collided") return;
    collisions += 1;
    const both = mergeContent(win.content, store.content);
    win.saver.settle(store.revision, false);
    win.show(both);
  };
  for (const { at, later, does } of acts) {
    const win = windows[at];
    if (does === "cut") store.line = "down";
    if (does === "mend") store.line = "up";
    if (does === "lose answers") store.line = "loses answers";
    if (does === "old page") oldPage = page();
    if (does === "in background") await background();
    const begin = () => {
      const from = store.line === "up" ? page() : oldPage;
      if (isKept) oldPage = from;
      return openAt(at, from);
    };
    if (does === "open" && !win) await begin();
    if (does === "open while another sends" && !win)
      await Promise.all([begin(), turns(later).then(background)]);
    if (!win) continue;
    if (does === "mark") {
      const id = `m${(count += 1)}`;
      win.show(withMark(win.content, id));
      await win.keeper.settled();
      safe.push(id);
    }
    if (does.endsWith("photo")) {
      const file = new File(["x"], does === "photo" ? "bead.jpg" : "torn.jpg");
      const { id } = await win.keeper.addPhoto(file, "back", null);
      win.saver.touch();
      if (does === "photo") photos.push(id);
    }
    if (does === "save") await win.saver.flush();
    if (does === "choose") choose(win);
    if (does === "kill") {
      // In the middle of a save: it may arrive and be answered to nobody.
      void win.saver.flush();
      win.die(device);
      windows[at] = null;
    }
  }
  store.line = "up";
  for (let round = 0; round < 12; round += 1) {
    for (const at of [0, 1]) {
      if (!windows[at]) await openAt(at, page());
      const win = windows[at]!;
      await win.saver.flush();
      choose(win);
      await win.saver.flush();
      await win.leaveOutRefused();
      win.die(device);
      windows[at] = null;
    }
  }
  return {
    store,
    safe,
    photos,
    collisions,
    left: (await disk.beads()).filter(({ held }) => !held.isSent),
    disk,
  };
}

describe("over any order of marks, photos, kills, outages and lost answers", () => {
  it.each([
    ["a bead that is stored", false],
    ["a bead that begins on the device", true],
  ])("on %s: no gesture that was written down is lost, and nothing arrives twice", async (_, isNew) => {
    let runs = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(act, { maxLength: 40, size: "max" }), async (acts) => {
        const { store, safe, photos, left, disk } = await run(acts, isNew, `device-${(runs += 1)}`);
        expect([...marksOf(store.content)].sort()).toEqual([...new Set(marksOf(store.content))].sort());
        expect(safe.filter((id) => !marksOf(store.content).includes(id))).toEqual([]);
        expect([...store.photos].sort()).toEqual([...photos].sort());
        expect(left).toEqual([]);
        expect((await disk.photos()).filter(({ refused }: KeptPhoto) => refused === null)).toEqual([]);
        // A bead is made with the first gesture, never by being opened.
        if (isNew && safe.length + photos.length === 0 && !acts.some(({ does }) => does === "torn photo"))
          expect(store.isMade).toBe(false);
      }),
      { seed: 20261126, numRuns: 250 },
    );
  });

  it("in one window after the other: nobody is asked to choose between two versions of their own", async () => {
    let runs = 0;
    const alone = act.map(({ later, does }) => ({ at: 0, later, does: does === "old page" ? "open" : does }));
    await fc.assert(
      fc.asyncProperty(fc.array(alone, { maxLength: 40, size: "max" }), fc.boolean(), async (acts, isNew) => {
        const { store, safe, collisions } = await run(acts, isNew, `alone-${(runs += 1)}`, true);
        expect(collisions).toBe(0);
        expect(marksOf(store.content)).toEqual(safe);
      }),
      { seed: 20261127, numRuns: 250 },
    );
  });
});
