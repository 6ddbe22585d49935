import {
  BookOpen,
  ChartNoAxesColumn,
  ClipboardCheck,
  GraduationCap,
  MessageSquareText,
  NotebookPen,
  Scale,
  Target,
  type LucideIcon,
} from "lucide-react";
import type { SVGProps } from "react";

/** A bead between its toes, as on the name. */
function Bead(props: SVGProps<SVGSVGElement>) {
  return (
    <svg
      viewBox="0 0 24 24"
      width="24"
      height="24"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      {...props}
    >
      <path d="M1 18 H23" />
      <path d="M5 18 C 7 8, 17 8, 19 18" />
    </svg>
  );
}

/** The pictures of the places that stand in sight. */
export const wayIcons = {
  beads: Bead,
  course: GraduationCap,
  exercises: NotebookPen,
  feedback: MessageSquareText,
  jobs: ClipboardCheck,
  criteria: Scale,
  trends: ChartNoAxesColumn,
  atlas: BookOpen,
  plan: Target,
} as const satisfies Readonly<Record<string, LucideIcon | typeof Bead>>;
export type WayIcon = keyof typeof wayIcons;
