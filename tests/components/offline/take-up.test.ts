import { describe, expect, it } from "vitest";
import { photosToSend, unsentOf, type KeptBead, type KeptPhoto } from "@/components/offline/kept";
import { openingOf, takeUp } from "@/components/offline/take-up";
import { scaledTo } from "@/components/offline/scaled-to";
import { emptyBeadContent, newPhotoContent } from "@/lib/assess";

const kept = (part: {
  key?: string;
  at?: number;
  basedOn?: number;
  isSent?: boolean;
  photos?: KeptBead["photos"];
}): KeptBead => ({
  key: part.key ?? "b/w1",
  beadId: "b",
  by: "owner",
  isNew: false,
  number: 7,
  madeAs: null,
  held: {
    basedOn: part.basedOn ?? 1,
    content: {
      ...emptyBeadContent,
      photos: (part.photos ?? []).map(({ id }) => newPhotoContent(id, "back")),
    },
    tried: null,
    isSent: part.isSent ?? false,
  },
  photos: part.photos ?? [],
  at: part.at ?? 0,
  stuck: null,
});
const photo = (id: string, part: Partial<KeptPhoto> = {}): KeptPhoto => ({
  id,
  beadId: "b",
  by: "owner",
  role: "face",
  name: `${id}.jpg`,
  file: new Blob(["x"]),
  size: null,
  at: 0,
  refused: null,
  ...part,
});

describe("what a bead is opened with", () => {
  it("is the page where nothing was left behind, or only what the page shows", () => {
    expect(openingOf({ revision: 3 }, [])).toEqual({ taken: null, done: [] });
    const shown = kept({ isSent: true, basedOn: 3 });
    expect(openingOf({ revision: 3 }, [shown])).toEqual({ taken: null, done: [shown.key] });
  });

  it("is acknowledged work where the page is older: it came out of this device", () => {
    const ahead = kept({ isSent: true, basedOn: 5 });
    expect(openingOf({ revision: 3 }, [ahead])).toEqual({ taken: ahead, done: [] });
  });

  it("is the newest work that nobody acknowledged, and the rest of it stays for another time", () => {
    const [old, young] = [kept({ key: "b/w1", at: 1 }), kept({ key: "b/w2", at: 2 })];
    expect(openingOf({ revision: 9 }, [old, young])).toEqual({ taken: young, done: [] });
  });
});

describe("what the screen shows of it", () => {
  it("keeps photos that only the page knows, as the page has them", () => {
    const theirs = { id: "p2", sha256: "b".repeat(64), widthPx: 10, heightPx: 10 };
    const mine = { id: "p1", sha256: "", widthPx: 20, heightPx: 10 };
    const page = {
      revision: 1,
      content: { ...emptyBeadContent, photos: [newPhotoContent("p2", "section")] },
      photos: [theirs],
    };
    const shown = takeUp(page, kept({ photos: [mine] }));
    expect(shown.photos).toEqual([mine, theirs]);
    expect(shown.content.photos.map(({ id, role }) => [id, role])).toEqual([
      ["p1", "back"],
      ["p2", "section"],
    ]);
  });

  it("takes the page's word for a photo that has arrived meanwhile", () => {
    const arrived = { id: "p1", sha256: "c".repeat(64), widthPx: 20, heightPx: 10 };
    const page = { revision: 1, content: emptyBeadContent, photos: [arrived] };
    expect(takeUp(page, kept({ photos: [{ ...arrived, sha256: "" }] })).photos).toEqual([arrived]);
  });
});

describe("photos that wait", () => {
  it("go out as they were taken; one that was refused never by itself", () => {
    const waiting = [
      photo("c", { at: 2 }),
      photo("b", { at: 1 }),
      photo("a", { at: 1 }),
      photo("d", { refused: "Torn." }),
    ];
    expect(photosToSend(waiting).map(({ id }) => id)).toEqual(["a", "b", "c"]);
    expect(unsentOf(false, waiting)).toEqual({ changes: true, photos: 3, count: 4 });
    expect(unsentOf(true, []).count).toBe(0);
  });

  it("are shown no larger than the server would", () => {
    expect(scaledTo(8000, 6000, 4096)).toEqual({ widthPx: 4096, heightPx: 3072 });
    expect(scaledTo(3000, 4000, 4096)).toEqual({ widthPx: 3000, heightPx: 4000 });
    expect(scaledTo(100_000, 1, 4096)).toEqual({ widthPx: 4096, heightPx: 1 });
  });
});
