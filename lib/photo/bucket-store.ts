import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { AwsClient } from "aws4fetch";
import { StoreTrouble } from "./issue";
import { isSha256, META_FILE, viewFile } from "./paths";
import type { ByteRange, OnDesk, PhotoFile, PhotoStore } from "./store-types";
import { photoSizes, type PhotoSize } from "./types";

/** Each answer must come within this, the largest photo on a slow line too. */
const DEADLINE_MS = 60_000;

interface Bucket {
  readonly client: AwsClient;
  /** "https://host/bucket/prefix", without a slash at its end. */
  readonly base: string;
}

/**
 * A bucket behind an S3 interface: "s3://BUCKET/PREFIX". Host and keys come from the environment: TOELINE_S3_ENDPOINT,
 * TOELINE_S3_REGION (us-east-1), AWS_ACCESS_KEY_ID, AWS_SECRET_ACCESS_KEY. Every body is signed with its SHA-256, so the
 * store refuses what arrives as something else; an original's is its own name.
 */
export function bucketStore(place: string): PhotoStore {
  const bucket = bucketAt(place);
  return {
    shared: true,
    keep: (sha256, desk) => keep(bucket, sha256, desk),
    async read(sha256, file) {
      const answer = await ask(bucket, "GET", nameOf(sha256, file));
      return answer && Buffer.from(await troubled(answer.arrayBuffer()));
    },
    async open(sha256, file, range) {
      const answer = await ask(bucket, "GET", nameOf(sha256, file), range ? { range: rangeText(range) } : {});
      return answer && { size: wholeSize(answer), body: bodyOf(answer) };
    },
    async size(sha256, file) {
      const answer = await ask(bucket, "HEAD", nameOf(sha256, file));
      return answer && wholeSize(answer);
    },
    async discard(sha256) {
      const made: readonly PhotoFile[] = ["meta", ...(Object.keys(photoSizes) as PhotoSize[])];
      for (const file of [...made, "original"] as const) await ask(bucket, "DELETE", nameOf(sha256, file));
    },
  };
}

function bucketAt(place: string): Bucket {
  const env = process.env;
  const endpoint = env["TOELINE_S3_ENDPOINT"];
  const [accessKeyId, secretAccessKey] = [env["AWS_ACCESS_KEY_ID"], env["AWS_SECRET_ACCESS_KEY"]];
  if (!endpoint || !accessKeyId || !secretAccessKey)
    throw new StoreTrouble(
      `${place} needs TOELINE_S3_ENDPOINT, AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY.`,
    );
  const region = env["TOELINE_S3_REGION"] || "us-east-1";
  const client = new AwsClient({ accessKeyId, secretAccessKey, region, service: "s3", retries: 3 });
  return {
    client,
    base: `${endpoint.replace(/\/+$/, "")}/${place.slice("s3://".length).replace(/\/+$/, "")}`,
  };
}

/** The name of a file in the bucket; null where the photo's name is no SHA-256 (a name from a URL may be anything). */
function nameOf(sha256: string, file: PhotoFile): string | null {
  if (!isSha256(sha256)) return null;
  if (file === "original") return `originals/${sha256}`;
  return `views/${sha256}/${file === "meta" ? META_FILE : viewFile(file)}`;
}

/** Original first and meta last, so that a photo that was cut off counts as not there and is written again. */
async function keep(bucket: Bucket, sha256: string, { original, views }: OnDesk): Promise<void> {
  await put(bucket, nameOf(sha256, "original"), await readFile(original), { onlyNew: true });
  for (const file of [...(Object.keys(photoSizes) as PhotoSize[]), "meta"] as const) {
    const bytes = await readFile(path.join(views, file === "meta" ? META_FILE : viewFile(file)));
    await put(bucket, nameOf(sha256, file), bytes, { onlyNew: false });
  }
}

/** `onlyNew`: nothing is written over; of what is there under this name, length and entity are what ours would be. */
async function put(
  bucket: Bucket,
  name: string | null,
  bytes: Buffer,
  { onlyNew }: { readonly onlyNew: boolean },
): Promise<void> {
  const answer = await ask(bucket, "PUT", name, onlyNew ? { "if-none-match": "*" } : {}, bytes);
  if (answer?.status !== 412) return;
  const there = await ask(bucket, "HEAD", name);
  if (!there || wholeSize(there) !== bytes.length)
    throw new StoreTrouble(`${name} is in the store with another length`);
}

const sha256Of = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** One request; null: there is no such file. 412 is an answer, everything else that is no success is trouble. */
async function ask(
  { client, base }: Bucket,
  method: "GET" | "HEAD" | "PUT" | "DELETE",
  name: string | null,
  headers: Readonly<Record<string, string>> = {},
  body: Buffer = Buffer.alloc(0),
): Promise<Response | null> {
  if (name === null) return null;
  const answer = await troubled(
    client.fetch(`${base}/${name}`, {
      method,
      headers: { ...headers, "x-amz-content-sha256": sha256Of(body) },
      signal: AbortSignal.timeout(DEADLINE_MS),
      ...(method === "PUT" ? { body: new Uint8Array(body) } : {}),
    }),
  );
  if (answer.ok || answer.status === 412) return answer;
  const said = method === "HEAD" ? "" : (await answer.text().catch(() => "")).slice(0, 300);
  if (answer.status === 404 && !said.includes("NoSuchBucket")) return null;
  throw new StoreTrouble(`${method} ${name}: ${answer.status} ${said}`, answer.status === 507);
}

async function troubled<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    throw new StoreTrouble("the photo store does not answer", false, { cause: error });
  }
}

async function* bodyOf(answer: Response): AsyncGenerator<Uint8Array> {
  if (answer.body === null) return;
  try {
    yield* answer.body as unknown as AsyncIterable<Uint8Array>;
  } catch (error) {
    throw new StoreTrouble("the photo store broke off", false, { cause: error });
  }
}

const rangeText = ({ from, to }: ByteRange): string => `bytes=${from}-${to ?? ""}`;

/** Of a part's answer the whole stands behind the slash. */
function wholeSize(answer: Response): number {
  const whole = /\/(\d+)$/.exec(answer.headers.get("content-range") ?? "")?.[1];
  return Number(whole ?? answer.headers.get("content-length"));
}
