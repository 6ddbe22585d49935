import { useId, type ReactNode } from "react";
import { Chip } from "@/components/ui";
import styles from "./mark-card.module.css";

/** A named row of chips. */
export function ChoiceRow<T extends string>({
  name,
  hint,
  choices,
  isOn,
  onToggle,
  disabled,
}: {
  name: string;
  hint?: ReactNode;
  choices: readonly { readonly id: T; readonly name: string }[];
  isOn: (id: T) => boolean;
  onToggle: (id: T) => void;
  disabled: boolean;
}) {
  const id = useId();
  return (
    <div role="group" aria-labelledby={id} className={styles.choice}>
      <p id={id} className={styles.label}>
        {name}
        {hint !== undefined && <span className={styles.hint}> {hint}</span>}
      </p>
      <div className={styles.chips}>
        {choices.map((choice) => (
          <Chip key={choice.id} on={isOn(choice.id)} disabled={disabled} onClick={() => onToggle(choice.id)}>
            {choice.name}
          </Chip>
        ))}
      </div>
    </div>
  );
}
