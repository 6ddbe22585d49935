"use client";

import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from "react";
import { useRevision } from "@/components/saving";
import type { BeadContent, PhotoFacts } from "@/lib/assess";
import { askToKeep, picturesOf } from "./ask-to-keep";
import { takeIn } from "./take-in";
import { serverDoors } from "./bead-doors";
import { BeadKeeper, type KeeperNews } from "./bead-keeper";
import type { KeptBeadSaving, ScreenNews } from "./kept-saving";
import type { PageBead } from "./take-up";
import { useLeaveWarning } from "./use-leave-warning";
import { useOpening } from "./use-opening";
import { useOwnAddress } from "./use-own-address";
import { usePictures } from "./use-pictures";
import { useWho } from "./who";

/**
 * A bead that is saved at a revision and kept on this device until it is: each gesture is written down at once, what got
 * no answer goes out again by itself, and a window that comes after a killed one takes up where that one stopped.
 *
 * @param bead What the page brought.
 * @param photos Of those on the screen.
 */
export function useKeptBead(
  bead: PageBead & { readonly id: string; readonly number: number | null },
  content: BeadContent,
  photos: readonly PhotoFacts[],
  screen: ScreenNews,
): KeptBeadSaving {
  const keeper = useKeeper(bead);
  const state = useSyncExternalStore(keeper.subscribe, keeper.state, keeper.state);
  const { said, setSaid, tell } = useSaid();
  const [sending, setSending] = useState<KeptBeadSaving["sending"]>(null);
  const pictures = usePictures(state.photos);
  const news = useNewest(screen);
  const save = useRevision("auto", bead.revision, content, (basedOn, one: BeadContent) => {
    const doors = serverDoors((id, share) => setSending({ id, share }));
    return keeper.send(basedOn, one, doors, newsOf(keeper, news, tell)).finally(() => setSending(null));
  });
  useOpening({ bead, keeper, save, news });

  // Every state of the saver is one more reason to write: what is in doubt, and that it was acknowledged.
  useEffect(
    () => keeper.keep(save.saver.held(), photos),
    [keeper, save.saver, save.state, content, photos, state],
  );
  const countUnsent = () => keeper.unsent(save.saver.held().isSent);
  const unsent = countUnsent();
  useLeaveWarning(unsent.count > 0);
  useOwnAddress(bead.id, state.isNew, unsent.count > 0);
  return {
    ...state,
    ...{ urlOf: pictures.urlOf, save, unsent, countUnsent, sending, said },
    addPhotos: async (files, role) => {
      setSaid([]);
      for (const file of files) tell(await takeIn(file, role, { keeper, pictures, screen: news.current }));
      save.saver.touch();
      void save.flush();
    },
    dropPhoto: (photo) => keeper.dropPhoto(photo.id),
  };
}

/** What the last render brought, for what happens between renders. */
function useNewest<T>(value: T): { readonly current: T } {
  const newest = useRef(value);
  useEffect(() => {
    newest.current = value;
  });
  return newest;
}

/** Sentences told since they were last cleared. */
function useSaid() {
  const [said, setSaid] = useState<readonly string[]>([]);
  const tell = useCallback((more: readonly string[]) => setSaid((before) => [...before, ...more]), []);
  return { said, setSaid, tell };
}

/** One keeper for as long as the screen is shown. */
function useKeeper({
  id: beadId,
  number,
}: {
  readonly id: string;
  readonly number: number | null;
}): BeadKeeper {
  const by = useWho();
  const [keeper] = useState(() => new BeadKeeper({ beadId, by, isNew: number === null, number }));
  return keeper;
}

function newsOf(
  keeper: BeadKeeper,
  screen: { readonly current: ScreenNews },
  tell: (more: readonly string[]) => void,
): KeeperNews {
  return {
    made: (bead) => screen.current.onMade(bead),
    taken: ({ role, size }, { photo, said }) => {
      screen.current.onPhotoTaken({ ...photo, role });
      void askToKeep({ pictures: picturesOf(photo.sha256) });
      const isOther = size && (size.widthPx !== photo.widthPx || size.heightPx !== photo.heightPx);
      tell(isOther ? [...said, otherSize] : said);
    },
    refused: ({ id, name }, why) => {
      if (screen.current.onPhotoRefused(id)) void keeper.dropPhoto(id);
      tell([`${name}: ${why}`]);
    },
  };
}

const otherSize =
  "This photo has another size in Toeline than this browser showed. Look whether its marks still lie where they should.";
