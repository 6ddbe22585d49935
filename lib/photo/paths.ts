import { tmpdir } from "node:os";
import path from "node:path";
import { invariant } from "@/lib/base";
import type { PhotoSize } from "./types";

const files: Readonly<Record<PhotoSize, string>> = {
  view: "view.jpg",
  small: "small.jpg",
  thumb: "thumb.webp",
};
export const META_FILE = "meta.json";

export function isSha256(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text);
}

/** Where one data folder keeps its photos. `incoming` lies on the same file system, so that renames are atomic. */
export function photoFolders(dataDir: string) {
  const root = path.join(dataDir, "photos");
  return {
    originals: path.join(root, "originals"),
    views: path.join(root, "views"),
    incoming: path.join(root, "incoming"),
    strays: path.join(root, "strays"),
  };
}

/** Where uploads arrive before they are kept: beside a folder's photos; of a bucket, in this machine's own temporary files. */
export function incomingFolder(place: string): string {
  return place.startsWith("s3://") ? path.join(tmpdir(), "toeline-incoming") : photoFolders(place).incoming;
}

/** The original's bytes. They are evidence: read them, never serve them. null when the name is no SHA-256. */
export function originalPath(dataDir: string, sha256: string): string | null {
  return isSha256(sha256) ? path.join(photoFolders(dataDir).originals, sha256) : null;
}

/** A derived picture, free of metadata. null when the name is no SHA-256 (a name from a URL may be anything). @twice */
export function viewPath(dataDir: string, sha256: string, size: PhotoSize): string | null {
  const known = isSha256(sha256) && Object.hasOwn(files, size);
  // The mark keeps the bundler from packing the whole project because a path is not known when it builds.
  return known
    ? path.join(/* turbopackIgnore: true */ photoFolders(dataDir).views, sha256, files[size])
    : null;
}

export function viewType(size: PhotoSize): "image/jpeg" | "image/webp" {
  return size === "thumb" ? "image/webp" : "image/jpeg";
}

/** Where the files of a photo lie on a desk before they are kept. */
export function deskFiles(desk: string) {
  const views = path.join(desk, "views");
  return {
    original: path.join(desk, "original"),
    views,
    meta: path.join(views, META_FILE),
    view: path.join(views, files.view),
    small: path.join(views, files.small),
    thumb: path.join(views, files.thumb),
  } as const;
}

/** The folder of everything derived from one original; for names that this room computed itself. */
export function viewFolder(dataDir: string, sha256: string): string {
  invariant(isSha256(sha256), "a computed hash is a hash");
  return path.join(photoFolders(dataDir).views, sha256);
}

export function viewFile(size: PhotoSize): string {
  return files[size];
}
