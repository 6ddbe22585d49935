"use client";

import { Trash2 } from "lucide-react";
import { useState } from "react";
import type { KeptBeadSaving } from "@/components/offline";
import { Button, Choice } from "@/components/ui";
import type { PhotoRole } from "@/lib/assess";
import { photoUrl } from "./photo-url";
import type { WorkPhoto } from "./work-state";
import styles from "./photo-strip.module.css";

const roleWords: Readonly<Record<PhotoRole, string>> = {
  face: "Face",
  back: "Back",
  section: "Cut and etched",
};

/** The bead's photos as thumbnails: which one is shown, what it shows, and taking one off. */
export function PhotoStrip({
  photos,
  shownId,
  roles,
  beadId,
  kept,
  onShow,
  onRole,
  onRemoved,
}: {
  photos: readonly WorkPhoto[];
  shownId: string;
  roles: readonly PhotoRole[];
  beadId: string;
  kept: KeptBeadSaving;
  onShow: (id: string) => void;
  onRole: (id: string, role: PhotoRole) => void;
  onRemoved: (id: string) => void;
}) {
  const shown = photos.find(({ id }) => id === shownId);
  return (
    <div className={styles.strip}>
      <ul className={styles.thumbs}>
        {photos.map((photo, index) => (
          <li key={photo.id}>
            <button type="button" aria-pressed={photo.id === shownId} onClick={() => onShow(photo.id)}>
              <img src={photoUrl(photo, "thumb", kept)} alt="" />
              <span>
                {index + 1} {roleWords[photo.role]}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {shown && (
        <div className={styles.about}>
          <label>
            This photo shows{" "}
            <Choice
              value={shown.role}
              options={roles}
              nameOf={(role) => roleWords[role]}
              onChoose={(role) => onRole(shown.id, role)}
            />
          </label>
          <TakeOff key={shown.id} {...{ beadId, kept }} photo={shown} onRemoved={onRemoved} />
        </div>
      )}
    </div>
  );
}

/** Asks once, because the marks go with the photo. */
function TakeOff({
  beadId,
  kept,
  photo,
  onRemoved,
}: {
  beadId: string;
  kept: KeptBeadSaving;
  photo: WorkPhoto;
  onRemoved: (id: string) => void;
}) {
  const [asking, setAsking] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  async function remove() {
    const waiting = kept.photos.find(({ id }) => id === photo.id);
    if (waiting) await kept.dropPhoto(waiting);
    if (photo.sha256 === "") return onRemoved(photo.id);
    const address = `/api/beads/${beadId}/photos/${photo.id}`;
    const answer = await fetch(address, { method: "DELETE" }).catch(() => null);
    setAsking(false);
    // Gone already is as good as removed.
    if (answer?.ok || answer?.status === 404) return onRemoved(photo.id);
    setProblem("The photo could not be taken off. Is Toeline still running? Try again.");
  }
  return (
    <>
      {asking ? (
        <>
          <span>Its {photo.history.present.marks.length} marks go with it.</span>
          <Button tone="danger" onClick={() => void remove()}>
            Take it off
          </Button>
          <Button onClick={() => setAsking(false)}>Keep it</Button>
        </>
      ) : (
        <Button onClick={() => setAsking(true)} aria-label="Take this photo off the bead">
          <Trash2 size={20} aria-hidden="true" />
        </Button>
      )}
      {problem && <p role="alert">{problem}</p>}
    </>
  );
}
