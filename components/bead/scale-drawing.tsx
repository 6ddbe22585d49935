import type { ScalePickKind } from "@/components/canvas";

const dots: Readonly<Record<ScalePickKind, readonly (readonly [number, number])[]>> = {
  "two-points": [
    [8, 14],
    [56, 14],
  ],
  edges: [
    [18, 5],
    [46, 5],
    [59, 13],
    [59, 27],
    [46, 35],
    [18, 35],
    [5, 27],
    [5, 13],
  ],
  disc: [
    [32, 4],
    [47.2, 15.1],
    [41.4, 32.9],
    [22.6, 32.9],
    [16.8, 15.1],
  ],
  rectangle: [
    [6, 6],
    [58, 6],
    [58, 34],
    [6, 34],
  ],
};

/** The object in outline, with a dot wherever a point is picked. */
export function ScaleDrawing({ kind }: { kind: ScalePickKind }) {
  const line = { fill: "none", stroke: "currentColor", strokeWidth: 2 } as const;
  return (
    <svg viewBox="0 0 64 40" width="64" height="40" aria-hidden="true">
      {kind === "two-points" && (
        <path d="M3 14H61V28H3ZM8 14v6M16 14v4M24 14v4M32 14v6M40 14v4M48 14v4M56 14v6" {...line} />
      )}
      {kind === "edges" && <rect x="5" y="5" width="54" height="30" rx="6" {...line} />}
      {kind === "disc" && <circle cx="32" cy="20" r="16" {...line} />}
      {kind === "rectangle" && <rect x="6" y="6" width="52" height="28" {...line} />}
      {dots[kind].map(([x, y]) => (
        <circle key={`${x} ${y}`} cx={x} cy={y} r="3.5" fill="var(--straw)" stroke="var(--ink)" />
      ))}
    </svg>
  );
}
