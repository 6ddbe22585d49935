"use client";

import { Camera, ImagePlus } from "lucide-react";
import { useRef, useState } from "react";
import { WaitingPhotos, type KeptBeadSaving } from "@/components/offline";
import { Button } from "@/components/ui";
import type { PhotoRole } from "@/lib/assess";
import { MAX_PHOTO_MB } from "@/lib/base";
import styles from "./photo-drop.module.css";

const ACCEPT = "image/jpeg,image/png,image/webp,image/heic,image/heif,image/tiff,.heic,.heif,.tif,.tiff";

/** Drop, pick or take photos of the bead; what waits to be sent, and one sentence per photo refused. */
export function PhotoDrop({
  kept,
  role,
  compact,
}: {
  kept: KeptBeadSaving;
  role: PhotoRole;
  compact: boolean;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const camera = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const send = (files: File[]) => kept.addPhotos(files, role);
  const size = compact ? "normal" : "large";
  return (
    <div
      className={[styles.drop, compact ? styles.compact : "", over ? styles.over : ""].join(" ")}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        void send([...event.dataTransfer.files]);
      }}
    >
      {!compact && <Advice />}
      <div className={styles.buttons}>
        <Button tone={compact ? "plain" : "main"} size={size} onClick={() => camera.current?.click()}>
          <Camera aria-hidden="true" size={22} /> Take photo
        </Button>
        <Button size={size} onClick={() => picker.current?.click()}>
          <ImagePlus aria-hidden="true" size={22} /> {compact ? "Add photo" : "Choose or drop photos"}
        </Button>
      </div>
      <PhotoInput inputRef={camera} label="Take a photo with the camera" capture onFiles={send} />
      <PhotoInput inputRef={picker} label="Choose photos" onFiles={send} />
      <WaitingPhotos kept={kept} />
      {kept.said.length > 0 && (
        <div role="alert">
          <ul className={styles.messages}>
            {kept.said.map((message) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

function Advice() {
  return (
    <>
      <h2>Photograph the chipped bead</h2>
      <p>
        Square on, in even light, with a rule or any flat thing of known size lying beside the weld. JPEG,
        PNG, WebP, HEIC or TIFF, up to {MAX_PHOTO_MB} MB.
      </p>
    </>
  );
}

function PhotoInput({
  inputRef,
  label,
  capture,
  onFiles,
}: {
  inputRef: React.RefObject<HTMLInputElement | null>;
  label: string;
  capture?: boolean;
  onFiles: (files: File[]) => Promise<void>;
}) {
  return (
    <input
      ref={inputRef}
      type="file"
      className="visually-hidden"
      tabIndex={-1}
      aria-label={label}
      accept={ACCEPT}
      multiple={!capture}
      {...(capture ? { capture: "environment" as const } : {})}
      onChange={(event) => {
        const files = [...(event.target.files ?? [])];
        event.target.value = "";
        void onFiles(files);
      }}
    />
  );
}
