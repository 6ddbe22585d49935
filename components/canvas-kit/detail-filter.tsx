import { DETAIL_FILTER, DETAIL_REACH_PX } from "./eye-look";

/** Local contrast: what a place differs from its surroundings, added to it once more or less. */
export function DetailFilter({ share }: { share: number }) {
  if (share === 0) return null;
  return (
    <svg width="0" height="0" style={{ position: "absolute" }} aria-hidden="true">
      <filter id={DETAIL_FILTER} colorInterpolationFilters="sRGB" x="0" y="0" width="1" height="1">
        <feGaussianBlur
          in="SourceGraphic"
          stdDeviation={DETAIL_REACH_PX}
          edgeMode="duplicate"
          result="around"
        />
        <feComposite
          in="SourceGraphic"
          in2="around"
          operator="arithmetic"
          k1={0}
          k2={1 + share}
          k3={-share}
          k4={0}
        />
      </filter>
    </svg>
  );
}
