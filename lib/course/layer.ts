import { z } from "zod";
import { PhotoPlaceSchema } from "@/lib/marks";
import { imperfectionIds, imperfections } from "@/lib/trade";

/** Upright photo pixels, as in the drawings; without grain, because nothing is measured on this layer. */
const point = PhotoPlaceSchema;
const id = z.string().min(1).max(40);

export const MOST_LAYER_ITEMS = 200;
export const MOST_WORDS = 160;

/** What the words count as, where they name an imperfection; left out where they do not. */
const imperfection = z.enum(imperfectionIds).optional();

/** What an instructor draws over a student's photo. */
export const LayerItemSchema = z.discriminatedUnion("kind", [
  /** Points at something; its head at `to`, words at its tail. */
  z.object({
    id,
    kind: z.literal("arrow"),
    from: point,
    to: point,
    words: z.string().max(MOST_WORDS),
    imperfection,
  }),
  z.object({
    id,
    kind: z.literal("text"),
    at: point,
    words: z.string().trim().min(1).max(MOST_WORDS),
    imperfection,
  }),
  z.object({ id, kind: z.literal("freehand"), points: z.array(point).min(2).max(500) }),
  z.object({ id, kind: z.literal("outline"), points: z.array(point).min(3).max(500) }),
]);
export type LayerItem = z.infer<typeof LayerItemSchema>;
export type LayerPoint = z.infer<typeof point>;

export const LayerSchema = z.object({
  photoId: z.string().min(1).max(40),
  items: z.array(LayerItemSchema).max(MOST_LAYER_ITEMS),
});
export type Layer = z.infer<typeof LayerSchema>;

export const layerItemWords: Readonly<Record<LayerItem["kind"], string>> = {
  arrow: "Arrow",
  text: "Text",
  freehand: "Freehand",
  outline: "Outline",
};

/** What a list or a screen reader says of an item. */
export function itemName(item: LayerItem): string {
  const words = "words" in item ? item.words.trim() : "";
  return words === "" ? layerItemWords[item.kind] : `${layerItemWords[item.kind]}: ${words}`;
}

/** What an item counts as, in words; null where it is words alone. */
export function countsAsWords(item: LayerItem): string | null {
  return "imperfection" in item && item.imperfection ? imperfections[item.imperfection].name : null;
}

/** The items over one photo; none when there is no layer for it. */
export function itemsOver(layers: readonly Layer[], photoId: string): readonly LayerItem[] {
  return layers.find((layer) => layer.photoId === photoId)?.items ?? [];
}

/** The layers with one photo's items replaced; a layer without items is not kept. */
export function withItems(
  layers: readonly Layer[],
  photoId: string,
  items: readonly LayerItem[],
): readonly Layer[] {
  const others = layers.filter((layer) => layer.photoId !== photoId);
  return items.length === 0 ? others : [...others, { photoId, items: [...items] }];
}
