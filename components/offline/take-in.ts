import { unfitPhoto } from "@/components/saving";
import type { PhotoRole } from "@/lib/assess";
import { inWords } from "@/lib/base";
import type { BeadKeeper } from "./bead-keeper";
import { readLocalPicture } from "./measure-photo";
import type { Pictures } from "./use-pictures";
import type { ScreenNews } from "./kept-saving";

/** A photo that was taken or chosen: kept, and shown at once where this browser can. Returns why not, in sentences. */
export async function takeIn(
  file: File,
  role: PhotoRole,
  {
    keeper,
    pictures,
    screen,
  }: {
    readonly keeper: BeadKeeper;
    readonly pictures: Pictures;
    readonly screen: ScreenNews;
  },
): Promise<readonly string[]> {
  const unfit = unfitPhoto(file);
  if (unfit) return [`${file.name}: ${inWords(unfit)}`];
  const picture = await readLocalPicture(file);
  const size = picture && { widthPx: picture.widthPx, heightPx: picture.heightPx };
  const photo = await keeper.addPhoto(file, role, size);
  if (!picture || !size) return [];
  pictures.add(photo.id, picture);
  screen.onPhoto({ id: photo.id, sha256: "", ...size, role });
  return [];
}
