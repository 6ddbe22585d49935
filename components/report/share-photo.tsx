"use client";

import { svgText } from "@/components/picture";
import { ShareButton } from "@/components/ui";
import type { SheetDocument } from "@/lib/report";
import { ACROSS, printedScene } from "./printed-scene";

/** Longest side of the picture that is handed on, px: that of the small picture, enough for a message. */
const MOST_PX = 1600;

/** The photo with its marks as one picture in the phone's share sheet. */
export function SharePhoto({ photo, name }: { photo: SheetDocument["photos"][number]; name: string }) {
  return (
    <ShareButton make={() => markedPhoto(photo, name)} title={name}>
      Share the marked photo
    </ShareButton>
  );
}

async function markedPhoto(photo: SheetDocument["photos"][number], name: string): Promise<File> {
  const factor = Math.min(1, MOST_PX / Math.max(photo.widthPx, photo.heightPx));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(photo.widthPx * factor);
  canvas.height = Math.round(photo.heightPx * factor);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("no canvas");
  const marks = svgText(printedScene(photo), photo, ACROSS, canvas);
  for (const source of [
    `/api/photos/${photo.sha256}/small`,
    `data:image/svg+xml,${encodeURIComponent(marks)}`,
  ]) {
    const picture = new Image();
    picture.src = source;
    await picture.decode();
    context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  }
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", 0.9));
  if (!blob) throw new Error("no picture");
  return new File([blob], `${name}.jpg`, { type: "image/jpeg" });
}
