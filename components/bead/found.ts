import type { PhotoPoint, Scale } from "@/lib/marks";

/** What was found on a photo without a press; it counts for nothing until somebody accepts it. */
export interface Found {
  readonly photoId: string;
  readonly busy: boolean;
  readonly scale: Scale | null;
  /** Of a disc whose diameter nobody has said yet. */
  readonly rim: readonly PhotoPoint[] | null;
  /** What the scale was found from. */
  readonly words: string | null;
  readonly line: readonly PhotoPoint[] | null;
  /** Why no weld line is proposed, where that helps to take a better photo. */
  readonly said: string | null;
}
