import type { Mark } from "@/lib/marks";
import {
  imperfectionIds,
  imperfections,
  isoNumber,
  patterns,
  places,
  stretches,
  type ImperfectionId,
  type Joint,
} from "@/lib/trade";

/** What a mark says besides its shape, as far as tags carry it. */
export type TaggedMark = Pick<Mark, "place" | "stretch" | "patterns"> & {
  /** null: no tag of ours and no ISO 6520-1 number that means one imperfection. A person has to say. */
  readonly imperfection: ImperfectionId | null;
  /** The ISO 6520-1 number as it stood in a tag. */
  readonly iso6520: string | null;
};

const ISO_6520 = /^(?:ISO 6520-1[: ])?(\d{3,5})$/;

/**
 * Tags of a mark: the ISO 6520-1 number where there is one, our id, then place, stretch and patterns. Where the number
 * depends on the joint and nobody said which it is, none is written rather than perhaps the wrong one.
 */
export function tagsOf(mark: Mark, joint: Joint | null): readonly string[] {
  const number = isoNumber(mark.imperfection, joint);
  return [
    ...(number === null ? [] : [`ISO 6520-1 ${number}`]),
    mark.imperfection,
    ...(mark.place === null ? [] : [`place: ${mark.place}`]),
    ...(mark.stretch === null ? [] : [`stretch: ${mark.stretch}`]),
    ...mark.patterns.map((pattern) => `pattern: ${pattern}`),
  ];
}

/** What tags say. Our own id outranks the number, which can be shared; tags of others are passed over. */
export function readTags(tags: readonly string[]): TaggedMark {
  const iso6520 = tags.map((tag) => ISO_6520.exec(tag)?.[1]).find((found) => found !== undefined) ?? null;
  const named = imperfectionIds.find((id) => tags.includes(id)) ?? null;
  const numbered =
    iso6520 === null
      ? []
      : imperfectionIds.filter((id) =>
          [imperfections[id].iso6520, imperfections[id].iso6520InButt].includes(iso6520),
        );
  return {
    imperfection: named ?? (numbered.length === 1 ? (numbered[0] ?? null) : null),
    iso6520,
    place: places.find((place) => tags.includes(`place: ${place}`)) ?? null,
    stretch: stretches.find((stretch) => tags.includes(`stretch: ${stretch}`)) ?? null,
    // In the order of the tags, because that is the order they were ticked in.
    patterns: tags.flatMap((tag) => patterns.filter((pattern) => tag === `pattern: ${pattern}`)),
  };
}
