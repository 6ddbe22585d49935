import type { PhotoIssue, PhotoIssueCode } from "./issue";

type Data = PhotoIssue["data"];
const ACCEPTED = "Choose a JPEG, PNG, WebP, HEIC or TIFF photo.";
const mega = (value: Data[string] | undefined, per: number) =>
  String(Math.round((Number(value) / per) * 10) / 10);

/** One clear sentence about what to do, per code. */
export const photoSentences: Readonly<Record<PhotoIssueCode, (data: Data) => string>> = {
  "photo-too-large": ({ maxBytes }) =>
    `This file is larger than ${mega(maxBytes, 2 ** 20)} MB. Choose the camera's normal picture size, or crop the photo to the bead.`,
  "photo-cut-off": () =>
    "The upload broke off before the whole photo had arrived, so nothing was kept. Check the connection and send it again.",
  "photo-empty": () => "This file is empty. Copy the photo from the camera again and choose it once more.",
  "photo-not-a-picture": ({ looksLike }) =>
    `This file is not a photo: its content looks like ${looksLike}. ${ACCEPTED}`,
  "photo-unsupported-picture": ({ looksLike }) =>
    `This is ${looksLike}, which is not read here. Save it as JPEG or PNG and choose that file.`,
  "photo-camera-raw": () =>
    "This is a camera's raw file, which holds no finished picture. Export it as JPEG or TIFF and choose that file.",
  "photo-many-pictures": ({ looksLike }) =>
    `This file is ${looksLike} and holds more than one picture. Save the one picture of the bead as JPEG or PNG and choose that file.`,
  "photo-too-many-pixels": ({ widthPx, heightPx, maxPixels }) =>
    `This picture is ${widthPx} × ${heightPx} pixels, more than ${mega(maxPixels, 1e6)} megapixels. Crop it to the bead or save it smaller.`,
  "photo-too-costly": () =>
    "This picture is packed in a way that takes very long to read (interlaced, or of very many colours). Save it as a JPEG and send that.",
  "photo-too-many-waiting": () =>
    "Many of your photos are still being read. Wait until they are there, then send this one again.",
  "photo-too-small": ({ widthPx, heightPx, minSidePx }) =>
    `This picture is only ${widthPx} × ${heightPx} pixels; both sides need at least ${minSidePx}. Choose the original photo rather than its preview.`,
  "photo-damaged": () =>
    "This picture is cut off or damaged: it could not be read to its end. Copy it from the camera again or take a new one.",
  "photo-damaged-in-places": () =>
    "Some of this picture could not be read cleanly. Look whether the bead is whole in it; if not, copy it from the camera again.",
  "photo-orientation-unreadable": () =>
    "The camera's orientation note could not be read, so the photo is shown as stored. If it lies on its side, turn it in the phone and add it again.",
  "photo-disk-full": () => "The disk is full, so the photo was not kept. Free some space and send it again.",
  "photo-store-unusable": () =>
    "The photo folder could not be written, so the photo was not kept. Check that the data folder exists and may be written, then send it again.",
  "photo-missing": () =>
    "The original of this photo is no longer in the data folder. Put it back from a backup, or add the photo again.",
  "photo-altered": () =>
    "The original of this photo is no longer the file that was taken in. Put it back from a backup; until then do not rely on it as evidence.",
};

export function photoSentence(issue: PhotoIssue): string {
  return photoSentences[issue.code](issue.data);
}
