import sharp from "sharp";
import type { RenderedScene } from "./render-scene";

export interface Encoding {
  readonly quality: number;
  /** EXIF orientation: the pixels are stored turned so that a reader who obeys it sees the picture upright. */
  readonly orientation: 1 | 3 | 6 | 8;
}

/** Turn to apply to the upright picture so that the given EXIF orientation undoes it, degrees clockwise. */
const storedTurn = { 1: 0, 3: 180, 6: 270, 8: 90 } as const;

/** JPEG bytes with neutral EXIF: exposure, aperture and focal length, no maker, model, place or time. */
export async function encodePicture(
  picture: Pick<RenderedScene, "rgb" | "width" | "height">,
  encoding: Encoding,
): Promise<Buffer> {
  return sharp(picture.rgb, { raw: { width: picture.width, height: picture.height, channels: 3 } })
    .rotate(storedTurn[encoding.orientation])
    .jpeg({ quality: encoding.quality, chromaSubsampling: "4:2:0" })
    .withExif({
      IFD0: {
        ImageDescription: "Rendered picture, not a photograph",
      },
      IFD2: { ExposureTime: "1/60", FNumber: "18/10", ISOSpeedRatings: "125", FocalLength: "57/10" },
    })
    .withMetadata({ orientation: encoding.orientation })
    .toBuffer();
}
