import { later } from "@/components/ui";

/** What the board stands without: what opens over it when it is asked for. */
export const canvasCode = later(() => import("./canvas-late"));
