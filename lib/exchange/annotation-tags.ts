import { countAbout, type Mark } from "@/lib/marks";
import { isoNumber, type Joint } from "@/lib/trade";

/**
 * Tags of a mark: the ISO 6520-1 number where there is one, our id, then place, stretch, patterns and a count by eye. Where the number
 * depends on the joint and nobody said which it is, none is written rather than perhaps the wrong one.
 */
export function tagsOf(mark: Mark, joint: Joint | null): readonly string[] {
  const number = isoNumber(mark.imperfection, joint);
  const about = countAbout(mark);
  return [
    ...(number === null ? [] : [`ISO 6520-1 ${number}`]),
    mark.imperfection,
    ...(mark.place === null ? [] : [`place: ${mark.place}`]),
    ...(mark.stretch === null ? [] : [`stretch: ${mark.stretch}`]),
    ...mark.patterns.map((pattern) => `pattern: ${pattern}`),
    ...(about === null ? [] : [`about how many: ${about}`]),
  ];
}
