import { Readable } from "node:stream";
import { photoPlace } from "@/lib/db";
import { pagePicture, photoSizes, photoStore, viewType, type ByteRange, type PhotoSize } from "@/lib/photo";

/** Not kept by any browser: it may be there a moment later, or be seen by who signs in. */
export const noPicture = () =>
  new Response("No such picture.", { status: 404, headers: { "cache-control": "private, no-store" } });

/** One range of bytes as a browser asks for it; null: none, or one we need not understand (RFC 9110, 14.2). */
export function rangeAsked(header: string | null, size: number): ByteRange | "none-there" | null {
  const [, from, to] = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(header ?? "") ?? [];
  if (from === undefined || to === undefined || (from === "" && to === "")) return null;
  const begin = from === "" ? Math.max(0, size - Number(to)) : Number(from);
  const end = from === "" || to === "" ? size - 1 : Math.min(Number(to), size - 1);
  if (begin >= size || (from === "" && Number(to) === 0)) return "none-there";
  return begin > end ? null : { from: begin, to: end };
}

/** A derived picture, whole or the part asked for; 404 where there is none of this name. */
export async function pictureAnswer(
  request: Request,
  sha256: string,
  size: string,
  headers: Readonly<Record<string, string>>,
): Promise<Response> {
  if (size === "page") return pageAnswer(sha256, headers);
  if (!Object.hasOwn(photoSizes, size)) return noPicture();
  const of = size as PhotoSize;
  const store = photoStore(photoPlace());
  const asked = request.headers.get("range");
  const whole = asked === null ? null : await store.size(sha256, of);
  const range = whole === null ? null : rangeAsked(asked, whole);
  if (range === "none-there")
    return new Response(null, { status: 416, headers: { "content-range": `bytes */${whole}` } });
  const file = await store.open(sha256, of, ...(range ? [range] : []));
  if (file === null) return noPicture();
  const [first, last] = [range?.from ?? 0, range?.to ?? file.size - 1];
  return new Response(Readable.toWeb(Readable.from(file.body)) as ReadableStream<Uint8Array>, {
    status: range ? 206 : 200,
    headers: {
      "content-type": viewType(of),
      "content-length": String(last - first + 1),
      "accept-ranges": "bytes",
      ...(range ? { "content-range": `bytes ${first}-${last}/${file.size}` } : {}),
      "x-content-type-options": "nosniff",
      ...headers,
    },
  });
}

/** The picture for a phone's page, always whole: a browser asks for no part of what is this small. */
async function pageAnswer(sha256: string, headers: Readonly<Record<string, string>>): Promise<Response> {
  const bytes = await pagePicture(photoPlace(), sha256);
  if (bytes === null) return noPicture();
  return new Response(new Uint8Array(bytes), {
    headers: { "content-type": "image/webp", "x-content-type-options": "nosniff", ...headers },
  });
}
