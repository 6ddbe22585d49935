"use client";

import { CriteriaOptions, NewerVersion } from "@/components/criteria";
import { Field } from "@/components/ui";
import type { CriteriaSummary } from "@/lib/accept";
import type { ExerciseContent } from "@/lib/course";

/** Which acceptance criteria an exercise is judged by, and their choices. */
export function CriteriaFields({
  criteria,
  content,
  onChange,
}: {
  criteria: readonly CriteriaSummary[];
  content: ExerciseContent;
  onChange: (part: Pick<ExerciseContent, "criteriaId" | "criteriaSettings">) => void;
}) {
  const chosen = criteria.find(({ id }) => id === content.criteriaId) ?? null;
  const { criteriaSettings } = content;
  return (
    <>
      <Field
        label="Criteria"
        hint="The bead handed in is judged by these; the governing code and qualified people decide."
      >
        {(ids) => (
          <select
            {...ids}
            value={content.criteriaId ?? ""}
            onChange={({ target }) => onChange({ criteriaId: target.value || null, criteriaSettings: {} })}
          >
            <option value="">none: beads are not judged</option>
            <CriteriaOptions criteria={criteria} />
          </select>
        )}
      </Field>
      <NewerVersion
        chosen={content.criteriaId}
        criteria={criteria}
        what="exercise"
        onTake={(criteriaId) => onChange({ criteriaId, criteriaSettings })}
      />
      {chosen?.settings.map((setting) => (
        <Field key={setting.id} label={setting.title} hint={setting.note}>
          {(ids) => (
            <select
              {...ids}
              value={String(criteriaSettings[setting.id] ?? setting.default)}
              onChange={({ target }) => {
                const choice = setting.choices.find(({ value }) => String(value) === target.value);
                if (choice)
                  onChange({
                    criteriaId: chosen.id,
                    criteriaSettings: { ...criteriaSettings, [setting.id]: choice.value },
                  });
              }}
            >
              {setting.choices.map(({ value, title }) => (
                <option key={String(value)} value={String(value)}>
                  {title}
                </option>
              ))}
            </select>
          )}
        </Field>
      ))}
    </>
  );
}
