/** How the photo is brought to the eye, and to nothing else: sizes, sheet and print go by the photo as it was taken. */
export interface EyeLook {
  /** Factor on the light, 1 as taken. */
  readonly brightness: number;
  /** Factor on the distance from middle grey, 1 as taken. */
  readonly contrast: number;
  /** Share of the difference from the surroundings that is added, 0 as taken. */
  readonly detail: number;
}

export const asTaken: EyeLook = { brightness: 1, contrast: 1, detail: 0 };

export const eyeLookLimits: Readonly<Record<keyof EyeLook, readonly [least: number, most: number]>> = {
  brightness: [0.4, 3],
  contrast: [0.5, 3],
  detail: [0, 2],
};

export const isAsTaken = ({ brightness, contrast, detail }: EyeLook): boolean =>
  brightness === 1 && contrast === 1 && detail === 0;

/** The id of the filter that `detail` asks for; it stands in the page beside the photo. */
export const DETAIL_FILTER = "photo-detail";
/** Surroundings reach so far, CSS pixels: wider than a ripple, narrower than a bead. */
export const DETAIL_REACH_PX = 14;

/** As a CSS filter; empty where the photo is shown as taken. */
export function eyeFilter(look: EyeLook): string {
  const { brightness, contrast, detail } = look;
  return [
    ...(brightness === 1 ? [] : [`brightness(${brightness})`]),
    ...(contrast === 1 ? [] : [`contrast(${contrast})`]),
    ...(detail === 0 ? [] : [`url(#${DETAIL_FILTER})`]),
  ].join(" ");
}
