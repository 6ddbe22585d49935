import { crackIds, imperfections, type ImperfectionId } from "@/lib/trade";

/** One thing to look for, in a word: a kind of imperfection, or cracks of every kind at once. */
export interface Look {
  readonly name: string;
  readonly ids: readonly ImperfectionId[];
}

/** What there is to look for, in the order given. A person looks for cracks, not for seven kinds of them one by one. */
export function looks(ids: readonly ImperfectionId[]): readonly Look[] {
  const asked = new Set(ids);
  const mine = crackIds.filter((id) => asked.has(id));
  const single = (id: ImperfectionId): Look => ({ name: imperfections[id].name, ids: [id] });
  if (mine.length < crackIds.length) return [...asked].map(single);
  const rest = [...asked].filter((id) => !mine.includes(id));
  return [{ name: "Cracks of any kind", ids: mine }, ...rest.map(single)];
}
