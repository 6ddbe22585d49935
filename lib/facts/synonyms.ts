import { electrodeClassesNamed, imperfections, type ImperfectionId } from "@/lib/trade";
import { foldText } from "./fold";

/** Letters and digits in a row with one space between, as a search takes a text apart. */
const plain = (text: string): string =>
  ` ${foldText(text)
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()} `;

/** Every name an imperfection goes by, as plain text, by imperfection. */
const namesOf: readonly (readonly [ImperfectionId, readonly string[]])[] = Object.values(imperfections).map(
  ({ id, name, alsoCalled }) => [id, [name, ...alsoCalled].map(plain)],
);

/** Everything an imperfection is called at the bench and on paper. */
export function imperfectionWords(id: ImperfectionId): readonly string[] {
  const { name, alsoCalled } = imperfections[id];
  return [name, ...alsoCalled];
}

/** The imperfections a text speaks of by any of their names: "cold lap" speaks of overlap. */
export function spokenOf(text: string): readonly ImperfectionId[] {
  const words = plain(text);
  return namesOf.flatMap(([id, names]) => (names.some((name) => words.includes(name)) ? [id] : []));
}

/** An electrode as it is written, and as the tables write it: "E71T1C" is "E71T-1C". */
export function electrodeWords(written: string): readonly string[] {
  return [written, ...electrodeClassesNamed(written).map(({ id }) => id)];
}
