import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import type { RenderedScene } from "../render-scene";
import { severities, type CloseUp } from "./close-up";
import { closeUps } from "./close-ups";
import { renderCloseUp } from "./render-close-up";

/**
 * Renders every imperfection from near at each severity into public/close-ups, KIND-1.webp to KIND-3.webp, and the middle
 * one small as KIND-small.webp. Names given as arguments limit it to those.
 */
const folder = fileURLToPath(new URL("../../public/close-ups/", import.meta.url));
const PICTURE = { width: 480, height: 360, quality: 64 } as const;
const SMALL = { width: 208, height: 156, quality: 60 } as const;
const MEGAPIXELS = (PICTURE.width * PICTURE.height) / 1e6;

const webp = ({ rgb, width, height }: RenderedScene, size: typeof PICTURE | typeof SMALL): Promise<Buffer> =>
  sharp(rgb, { raw: { width, height, channels: 3 } })
    .resize(size.width, size.height, { fit: "cover" })
    .withExif({ IFD0: { ImageDescription: "Rendered picture, not a photograph" } })
    .webp({ quality: size.quality, effort: 6, smartSubsample: true })
    .toBuffer();

async function make(closeUp: CloseUp): Promise<number> {
  let bytes = 0;
  const keep = (name: string, picture: Buffer): void => {
    writeFileSync(`${folder}${name}.webp`, picture);
    bytes += picture.length;
  };
  for (const severity of severities) {
    const rendered = renderCloseUp(closeUp, severity, MEGAPIXELS);
    keep(`${closeUp.id}-${severity}`, await webp(rendered, PICTURE));
    if (severity === 2) keep(`${closeUp.id}-small`, await webp(rendered, SMALL));
  }
  return bytes;
}

mkdirSync(folder, { recursive: true });
const wanted = process.argv.slice(2);
for (const closeUp of closeUps.filter(({ id }) => wanted.length === 0 || wanted.includes(id)))
  process.stdout.write(`${closeUp.id} ${Math.round((await make(closeUp)) / 1000)} kB\n`);
