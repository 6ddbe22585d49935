import { imperfections, type ImperfectionId } from "@/lib/trade";

/** From the mildest that is still seen to the worst. */
export const severities = [1, 2, 3] as const;
export type Severity = (typeof severities)[number];

export const severityWords: Readonly<Record<Severity, string>> = { 1: "Slight", 2: "Plain", 3: "Severe" };

/** A rendered close-up: where it lies, what it shows in words, its size in pixels. */
export interface CloseUpPicture {
  readonly src: string;
  readonly alt: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

const nameOf = (id: ImperfectionId): string => imperfections[id].name;

/** The small picture of a kind, for lists. */
export const smallPicture = (id: ImperfectionId): CloseUpPicture => ({
  src: `/close-ups/${id}-small.webp`,
  alt: `${nameOf(id)}, rendered`,
  widthPx: 208,
  heightPx: 156,
});

/** The picture of a kind at one severity. */
export const pictureAt = (id: ImperfectionId, severity: Severity): CloseUpPicture => ({
  src: `/close-ups/${id}-${severity}.webp`,
  alt: `${nameOf(id)}, ${severityWords[severity].toLowerCase()}, rendered`,
  widthPx: 480,
  heightPx: 360,
});
