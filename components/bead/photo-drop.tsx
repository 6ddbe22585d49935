"use client";

import { Camera, ImagePlus } from "lucide-react";
import { useRef, useState } from "react";
import { Button } from "@/components/ui";
import type { PhotoRole } from "@/lib/assess";
import { inWords, MAX_PHOTO_MB } from "@/lib/base";
import { uploadPhoto, type Uploaded } from "./upload";
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
  onUploaded: (uploaded: Uploaded) => void;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const camera = useRef<HTMLInputElement>(null);
  const { sending, messages, send } = useSending(beadId, role, onUploaded);
  const [over, setOver] = useState(false);
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
      {sending && <SendingBar {...sending} />}
      {messages.length > 0 && (
        <div role="alert">
          <ul className={styles.messages}>
            {messages.map((message) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

/** Sends files one after the other; a refused one leaves its sentence and the next goes on. */
function useSending(beadId: string, role: PhotoRole, onUploaded: (uploaded: Uploaded) => void) {
  const [sending, setSending] = useState<Sending | null>(null);
  const [messages, setMessages] = useState<readonly string[]>([]);
  const tell = (told: readonly string[]) => setMessages((before) => [...before, ...told]);
  const send = async (files: Iterable<File>) => {
    setMessages([]);
    for (const file of files) {
      setSending({ name: file.name, share: 0 });
      const answer = await uploadPhoto(beadId, file, role, (share) => setSending({ name: file.name, share }));
      if (answer.ok) {
        const { alsoOn, notices } = answer.value;
        onUploaded(answer.value);
        tell([...notices, ...alsoOn.map((number) => `The same photo is also on bead ${number}.`)]);
      } else tell([`${file.name}: ${inWords(answer)}`]);
    }
    setSending(null);
  };
  return { sending, messages, send };
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

function SendingBar({ name, share }: Sending) {
  const isSent = share >= 1;
  return (
    <div className={styles.sending} role="status">
      <label>
        {isSent ? `Checking ${name}` : `Sending ${name}`}
        <progress max={1} value={isSent ? undefined : share} />
      </label>
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
