/** The whole body; null as soon as it is larger than `most` bytes. */
export async function readBody(request: Request, most: number): Promise<Uint8Array | null> {
  if (Number(request.headers.get("content-length")) > most) return null;
  const parts: Uint8Array[] = [];
  let bytes = 0;
  // Node's ReadableStream is iterable; the browser's type does not say so.
  const body = request.body as unknown as AsyncIterable<Uint8Array> | null;
  for await (const part of body ?? nothing()) {
    bytes += part.byteLength;
    if (bytes > most) return null;
    parts.push(part);
  }
  return new Uint8Array(Buffer.concat(parts));
}

async function* nothing(): AsyncGenerator<Uint8Array> {}
