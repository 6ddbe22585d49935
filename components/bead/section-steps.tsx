import { Check } from "lucide-react";
import type { Tool } from "@/components/canvas";
import { Button, Chip } from "@/components/ui";
import { nextSectionStep, type PhotoSection, type SectionStep } from "@/lib/assess";
import { sectionEdgeWords, sectionJointWords, sectionStepSentence } from "@/lib/report";
import { edgeRolesOf, sectionJoints, type SectionEdgeRole, type SectionJoint } from "@/lib/section";
import styles from "./section.module.css";
import { toolOfStep } from "./use-section-desk";

/** What is drawn, what is not, and in one sentence what comes next. */
export function SectionSteps({
  section,
  hasScale,
  tool,
  role,
  onJoint,
  onTake,
}: {
  section: PhotoSection | null;
  hasScale: boolean;
  tool: Tool;
  /** The edge that the edge tool draws. */
  role: SectionEdgeRole;
  onJoint: (joint: SectionJoint) => void;
  onTake: (step: SectionStep) => void;
}) {
  const next = nextSectionStep(section, hasScale);
  const isInHand = (step: SectionStep): boolean =>
    tool === toolOfStep(step) && (step.kind !== "edge" || step.role === role);
  const canTake = next !== null && next.kind !== "joint" && !isInHand(next);
  return (
    <div className={styles.steps}>
      <div className={styles.next}>
        <p role="status" data-testid="section-step">
          <strong>{next === null ? "Done." : "Next:"}</strong> {sectionStepSentence(next)}
        </p>
        {canTake && (
          <Button tone="main" size="large" onClick={() => onTake(next)}>
            {stepName(next)}
          </Button>
        )}
      </div>
      <div className={styles.chips} role="group" aria-label="Which joint was cut">
        {sectionJoints.map((joint) => (
          <Chip key={joint} on={section?.joint === joint} onClick={() => onJoint(joint)}>
            {sectionJointWords[joint]}
          </Chip>
        ))}
      </div>
      {section && (
        <div className={styles.chips} role="group" aria-label="Parts to draw">
          {stepsOf(section).map((step) => (
            <Chip key={stepName(step)} on={isInHand(step)} onClick={() => onTake(step)}>
              {isDrawn(step, section, hasScale) ? (
                <Check size={18} aria-label="drawn:" />
              ) : (
                <span className={styles.open} aria-label="not drawn:" role="img" />
              )}{" "}
              {stepName(step)}
            </Chip>
          ))}
        </div>
      )}
    </div>
  );
}

function stepsOf({ joint }: PhotoSection): readonly SectionStep[] {
  return [
    { kind: "scale" },
    { kind: "outline" },
    ...edgeRolesOf[joint].map((role): SectionStep => ({ kind: "edge", role })),
    ...(joint === "fillet" ? [{ kind: "root" } as const] : []),
  ];
}

function isDrawn(step: SectionStep, section: PhotoSection, hasScale: boolean): boolean {
  switch (step.kind) {
    case "joint":
      return true;
    case "scale":
      return hasScale;
    case "outline":
      return section.outline !== null;
    case "edge":
      return section.edges.some(({ role }) => role === step.role);
    case "root":
      return section.root !== null;
  }
}

function stepName(step: SectionStep): string {
  switch (step.kind) {
    case "joint":
      return "Joint";
    case "scale":
      return "Scale";
    case "outline":
      return "Weld metal";
    case "edge":
      return sectionEdgeWords[step.role];
    case "root":
      return "Root";
  }
}
