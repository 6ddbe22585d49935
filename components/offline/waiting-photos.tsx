"use client";

import { ImageOff } from "lucide-react";
import { EarlyPicture } from "@/components/picture";
import { Button } from "@/components/ui";
import type { KeptPhoto } from "./kept";
import type { KeptBeadSaving } from "./kept-saving";
import styles from "./waiting-photos.module.css";

/** Photos that Toeline does not have yet, each with where it is; one that this browser cannot show by its name. */
export function WaitingPhotos({ kept }: { kept: KeptBeadSaving }) {
  if (kept.photos.length === 0) return null;
  return (
    <ul className={styles.waiting} aria-label="Photos on their way">
      {kept.photos.map((photo) => (
        <Waiting key={photo.id} {...{ photo, kept }} />
      ))}
    </ul>
  );
}

function Waiting({ photo, kept }: { photo: KeptPhoto; kept: KeptBeadSaving }) {
  const url = kept.urlOf(photo.id);
  const share = kept.sending?.id === photo.id ? kept.sending.share : null;
  return (
    <li data-refused={photo.refused !== null}>
      <Shown {...{ photo, url }} />
      <span role="status">
        {photo.name}: {photo.refused ?? whereItIs(share, photo.size !== null)}
        {share !== null && <progress max={1} value={share >= 1 ? undefined : share} />}
      </span>
      {photo.refused !== null && <Button onClick={() => void kept.dropPhoto(photo)}>Leave it out</Button>}
    </li>
  );
}

/** One that this browser cannot read shows what it carries; one that was refused, or is not read yet, a sign. */
function Shown({ photo, url }: { photo: KeptPhoto; url: string | null }) {
  if (url) return <img src={url} alt="" />;
  if (photo.size === null && photo.refused === null)
    return <EarlyPicture file={photo.file} name={photo.name} />;
  return <ImageOff size={28} aria-hidden="true" />;
}

/** @param share Part of it that has gone out; null: it is not on its way. */
function whereItIs(share: number | null, isShown: boolean): string {
  if (share === null) return "kept on this device, goes out by itself";
  if (share < 1) return "on its way";
  return isShown ? "being checked" : "being read";
}
