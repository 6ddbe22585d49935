import sharp from "sharp";
import { houseSign } from "@/components/picture";

export const dynamic = "force-static";

/** `masked`: drawn smaller, because some devices cut a circle out of it. */
const icons: Readonly<Record<string, { readonly px: number; readonly masked: boolean }>> = {
  "192.png": { px: 192, masked: false },
  "512.png": { px: 512, masked: false },
  "180.png": { px: 180, masked: true },
  "masked-512.png": { px: 512, masked: true },
};

export function generateStaticParams() {
  return Object.keys(icons).map((name) => ({ name }));
}

/** The house's sign as a picture, made from its drawing when the pages are built. */
export async function GET(_: Request, { params }: { params: Promise<{ name: string }> }): Promise<Response> {
  const { name } = await params;
  const icon = Object.hasOwn(icons, name) ? icons[name] : undefined;
  if (!icon) return new Response("No such icon.", { status: 404 });
  const png = await sharp(Buffer.from(houseSign(icon.px, icon.masked)))
    .png()
    .toBuffer();
  return new Response(new Uint8Array(png), {
    headers: { "content-type": "image/png", "cache-control": "public, max-age=86400" },
  });
}
