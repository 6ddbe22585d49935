import { imperfectionIds, imperfections, type ImperfectionId } from "@/lib/trade";
import type { Layer, LayerItem } from "./layer";

const plain = (text: string): string => text.toLowerCase().replace(/[-–]/g, " ").replace(/\s+/g, " ").trim();

/** Names of the vocabulary, the longest first: "underfilled groove" is no "underfill". */
const names = imperfectionIds
  .flatMap((id) =>
    [imperfections[id].name, ...imperfections[id].alsoCalled].map((name) => ({ id, name: plain(name) })),
  )
  .toSorted((a, b) => b.name.length - a.name.length);

/** Words that say the opposite of being there. */
const denied = /\b(no|not|none|gone|without|never|cured|less|fewer|better|free)\b/;

/**
 * The imperfection that an instructor's words speak of: they begin with one of its names and do not say that it is
 * gone. null: words alone, which count as nothing.
 */
export function countsAs(words: string): ImperfectionId | null {
  const said = plain(words);
  if (denied.test(said)) return null;
  const found = names.find(
    ({ name }) => said.startsWith(name) && /^(s|es)?($|[^\p{L}\p{N}])/u.test(said.slice(name.length)),
  );
  return found?.id ?? null;
}

/** The item with what its words count as; an item whose words name nothing carries no kind. */
export function counted(item: LayerItem): LayerItem {
  if (item.kind !== "arrow" && item.kind !== "text") return item;
  const { imperfection: _before, ...bare } = item;
  const kind = countsAs(item.words);
  return kind === null ? bare : { ...bare, imperfection: kind };
}

/** The item as words alone. */
export function uncounted(item: LayerItem): LayerItem {
  if (item.kind !== "arrow" && item.kind !== "text") return item;
  const { imperfection: _before, ...bare } = item;
  return bare;
}

/** What the drawings over a bead's photos count as, each kind once. */
export function foundByLayers(layers: readonly Layer[]): readonly ImperfectionId[] {
  const kinds = layers.flatMap(({ items }) =>
    items.flatMap((item) => ("imperfection" in item && item.imperfection ? [item.imperfection] : [])),
  );
  return [...new Set(kinds)];
}
