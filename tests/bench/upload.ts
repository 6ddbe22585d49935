/**
 * From the last byte of an upload to the picture a person marks on, beside the same outputs made by bare sharp (and for HEIC
 * by heic-decode before it) in this process, in turn. The bytes before the last are there already, hashed and written.
 */
import { once } from "node:events";
import { request, type ClientRequest, type IncomingMessage } from "node:http";
import sharp, { type Sharp } from "sharp";
import { median, type Figure } from "./figures";
import { cameraHeic, cameraJpeg, withComment, withFreeBox } from "./photos";
import { wait } from "./windows";

const TURNS = 7;

interface Sent {
  readonly name: string;
  readonly type: "image/jpeg" | "image/heic";
  /** Another file each time: the same bytes again are recognised and cost nothing. */
  readonly bytes: (turn: number) => Buffer;
}

async function sendings(): Promise<readonly (Sent | { readonly name: string; readonly why: string })[]> {
  const sizes = [
    [12, 4000, 3000],
    [48, 8000, 6000],
  ] as const;
  const all = [];
  for (const [megapixels, width, height] of sizes) {
    const jpeg = await cameraJpeg(width, height);
    all.push({
      name: `${megapixels} MP JPEG`,
      type: "image/jpeg" as const,
      bytes: (turn: number) => withComment(jpeg, `turn ${turn}`),
    });
    const heic = await cameraHeic(width, height);
    const name = `${megapixels} MP HEIC`;
    if (heic === null) all.push({ name, why: "no heif-enc here to make one" });
    else
      all.push({
        name,
        type: "image/heic" as const,
        bytes: (turn: number) => withFreeBox(heic, `turn ${turn}`),
      });
  }
  return all;
}

/** Milliseconds from the last byte sent to the last byte of the view received. */
async function oursMs(url: string, beadId: string, { bytes, type }: Sent, turn: number): Promise<number> {
  const body = bytes(turn);
  const sending = request(`${url}/api/beads/${beadId}/photos`, {
    method: "POST",
    headers: { origin: url, "content-type": type, "content-length": body.length },
  });
  const answered = answerOf(sending);
  sending.write(body.subarray(0, -1));
  await wait(1500);
  const from = performance.now();
  sending.end(body.subarray(-1));
  const { photo } = await answered;
  const view = await fetch(`${url}/api/photos/${photo.sha256}/view`);
  if (!view.ok) throw new Error(`no view: ${view.status}`);
  await view.arrayBuffer();
  return performance.now() - from;
}

async function answerOf(sending: ClientRequest): Promise<{ photo: { sha256: string } }> {
  const [answer] = (await once(sending, "response")) as [IncomingMessage];
  const text = Buffer.concat(await answer.toArray()).toString();
  if (answer.statusCode !== 201) throw new Error(`${answer.statusCode} ${text}`);
  return JSON.parse(text) as { photo: { sha256: string } };
}

/** The three derived pictures from pixels, with the settings of `lib/photo`. */
function outputs(pixels: Buffer, width: number, height: number): readonly (() => Promise<Buffer>)[] {
  const scaled = (longest: number): Sharp =>
    sharp(pixels, { raw: { width, height, channels: 3 } }).resize({
      ...{ width: longest, height: longest, fit: "inside", withoutEnlargement: true },
    });
  const jpeg = { quality: 88, chromaSubsampling: "4:4:4", optimiseCoding: false } as const;
  return [
    () => scaled(4096).jpeg(jpeg).toBuffer(),
    () => scaled(1600).jpeg(jpeg).toBuffer(),
    () => scaled(480).webp({ quality: 80 }).toBuffer(),
  ];
}

interface Picture {
  readonly width: number;
  readonly height: number;
  /** RGBA. */
  readonly data: Uint8ClampedArray;
}

/** The package has no types. */
const heicDecode = async (buffer: Buffer): Promise<Picture> => {
  const name: string = "heic-decode";
  const { default: decode } = (await import(name)) as {
    default: (from: { buffer: Buffer }) => Promise<Picture>;
  };
  return decode({ buffer });
};

async function bareMs({ bytes, type }: Sent, turn: number, atOnce: boolean): Promise<number> {
  const body = bytes(turn);
  const from = performance.now();
  const source =
    type === "image/heic"
      ? await heicDecode(body).then(({ data, width, height }) =>
          sharp(data, { raw: { width, height, channels: 4 } }),
        )
      : sharp(body, { sequentialRead: true }).autoOrient();
  const { data, info } = await source
    .resize({ width: 4096, height: 4096, fit: "inside", withoutEnlargement: true })
    .flatten({ background: "#ffffff" })
    .raw()
    .toBuffer({ resolveWithObject: true });
  const making = outputs(data, info.width, info.height);
  if (atOnce) await Promise.all(making.map((make) => make()));
  else for (const make of making) await make();
  return performance.now() - from;
}

export async function uploadFigures(url: string): Promise<readonly Figure[]> {
  const { id } = (await (
    await fetch(`${url}/api/beads`, {
      method: "POST",
      headers: { origin: url, "content-type": "application/json" },
      body: "{}",
    })
  ).json()) as { id: string };
  const figures: Figure[] = [];
  for (const sent of await sendings()) figures.push(await figureOf(url, id, sent));
  return figures;
}

async function figureOf(
  url: string,
  id: string,
  sent: Sent | { readonly name: string; readonly why: string },
): Promise<Figure> {
  const work = `upload of ${sent.name}, last byte to first view`;
  const goal = { kind: "ratio", most: 1.25 } as const;
  const name = "bare sharp, same outputs";
  if ("why" in sent) return { work, ours: NaN, unit: "ms", baseline: null, goal, note: sent.why };
  const took = { ours: [] as number[], inRow: [] as number[], atOnce: [] as number[] };
  // The first warms both: what is loaded once is no part of an upload.
  for (let turn = 0; turn <= TURNS; turn += 1) {
    const once = {
      ours: await oursMs(url, id, sent, turn),
      inRow: await bareMs(sent, turn, false),
      atOnce: await bareMs(sent, turn, true),
    };
    if (turn === 0) continue;
    for (const key of ["ours", "inRow", "atOnce"] as const) took[key].push(once[key]);
  }
  const [inRow, atOnce] = [median(took.inRow), median(took.atOnce)];
  return {
    work,
    ours: median(took.ours),
    unit: "ms",
    // The quicker of the two ways there are is what there is to beat.
    baseline: { name, value: Math.min(inRow, atOnce) },
    goal,
    note: `bare one after the other ${inRow.toFixed(0)} ms, side by side ${atOnce.toFixed(0)} ms`,
  };
}
