"use client";

import { Camera, ImageUp } from "lucide-react";
import { useEffect, useState, type ReactNode } from "react";
import { EarlyPicture } from "@/components/picture";
import { buttonClass, page } from "@/components/ui";
import { formatQuantity } from "@/lib/units";
import styles from "./hand-in-form.module.css";

/** Takes a photo or chooses one, and shows it where the browser can. */
export function PhotoPick({ photo, onPick }: { photo: File | null; onPick: (photo: File) => void }) {
  const [shown, setShown] = useState<string | null>(null);
  /** What this browser could not show; the photo is sent all the same. */
  const [unshown, setUnshown] = useState<File | null>(null);
  useEffect(() => {
    if (!photo) return;
    const url = URL.createObjectURL(photo);
    setShown(url);
    return () => URL.revokeObjectURL(url);
  }, [photo]);
  const input = (label: string, capture: boolean, icon: ReactNode) => (
    <label className={`${buttonClass("plain", "large")} ${styles.pick}`}>
      {icon} {label}
      <input
        type="file"
        className="visually-hidden"
        accept="image/*,.heic,.heif"
        {...(capture ? { capture: "environment" as const } : {})}
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file) onPick(file);
        }}
      />
    </label>
  );
  return (
    <div className={styles.group}>
      <div className={page.buttons}>
        {input("Take a photo", true, <Camera aria-hidden="true" />)}
        {input("Choose a photo", false, <ImageUp aria-hidden="true" />)}
      </div>
      {photo && (
        <p role="status">
          {photo.name}, {formatQuantity("fileSize", photo.size, "metric")}
        </p>
      )}
      {photo && photo === unshown && <EarlyPicture file={photo} name={photo.name} />}
      {shown && photo !== unshown && (
        <img className={styles.preview} src={shown} alt="" onError={() => setUnshown(photo)} />
      )}
    </div>
  );
}
