"use client";

import { Camera, ImagePlus } from "lucide-react";
import { useRef, useState, type DragEvent } from "react";
import { Button } from "@/components/ui";
import type { PhotoRole } from "@/lib/assess";
import { uploadPhoto, type UploadAnswer } from "./upload";
import styles from "./photo-drop.module.css";

const ACCEPT = "image/jpeg,image/png,image/webp,image/heic,image/heif,image/tiff,.heic,.heif,.tif,.tiff";

interface Sending {
  readonly name: string;
  readonly share: number;
}

/** Drop, pick or take photos of the bead; one bar per photo being sent, one sentence per photo refused. */
export function PhotoDrop({
  beadId,
  role,
  compact,
  onUploaded,
}: {
  beadId: string;
  role: PhotoRole;
  compact: boolean;
  onUploaded: (answer: Extract<UploadAnswer, { ok: true }>) => void;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const camera = useRef<HTMLInputElement>(null);
  const [sending, setSending] = useState<Sending | null>(null);
  const [messages, setMessages] = useState<readonly string[]>([]);
  const [over, setOver] = useState(false);

  async function send(files: Iterable<File>) {
    setMessages([]);
    for (const file of files) {
      setSending({ name: file.name, share: 0 });
      const answer = await uploadPhoto(beadId, file, role, (share) => setSending({ name: file.name, share }));
      if (answer.ok) {
        onUploaded(answer);
        const also = answer.alsoOn.map((number) => `The same photo is also on bead ${number}.`);
        setMessages((before) => [...before, ...answer.notices, ...also]);
      } else setMessages((before) => [...before, `${file.name}: ${answer.message}`]);
    }
    setSending(null);
  }

  function drop(event: DragEvent) {
    event.preventDefault();
    setOver(false);
    void send([...event.dataTransfer.files]);
  }

  return (
    <div
      className={[styles.drop, compact ? styles.compact : "", over ? styles.over : ""].join(" ")}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      {!compact && (
        <>
          <h2>Photograph the chipped bead</h2>
          <p>
            Square on, in even light, with a rule or any flat thing of known size lying beside the weld. JPEG,
            PNG, WebP, HEIC or TIFF, up to 40 MB.
          </p>
        </>
      )}
      <div className={styles.buttons}>
        <Button
          tone={compact ? "plain" : "main"}
          size={compact ? "normal" : "large"}
          onClick={() => camera.current?.click()}
        >
          <Camera aria-hidden="true" size={22} /> Take photo
        </Button>
        <Button size={compact ? "normal" : "large"} onClick={() => picker.current?.click()}>
          <ImagePlus aria-hidden="true" size={22} /> {compact ? "Add photo" : "Choose or drop photos"}
        </Button>
      </div>
      <PhotoInput inputRef={camera} label="Take a photo with the camera" capture onFiles={send} />
      <PhotoInput inputRef={picker} label="Choose photos" onFiles={send} />
      {sending && (
        <div className={styles.sending} role="status">
          <label>
            {sending.share < 1 ? `Sending ${sending.name}` : `Checking ${sending.name}`}
            <progress max={1} value={sending.share < 1 ? sending.share : undefined} />
          </label>
        </div>
      )}
      {messages.length > 0 && (
        <ul className={styles.messages} role="alert">
          {messages.map((message) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      )}
    </div>
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
