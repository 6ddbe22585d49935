import { Field, useTypedText } from "@/components/ui";
import type { PhotoSection } from "@/lib/assess";
import { sectionWrittenFields } from "@/lib/report";
import { sectionReportFields, type ReportField } from "@/lib/section";
import styles from "./section.module.css";

/** What a report of the examination names and only a person knows; the rest stands on the sheet anyway. */
export function SectionReport({
  section,
  onText,
}: {
  section: PhotoSection;
  onText: (field: string, text: string) => void;
}) {
  const known = sectionReportFields.filter(({ from }) => from !== "person");
  return (
    <details className={styles.more}>
      <summary>Report of the examination (ISO 17639)</summary>
      <div className={styles.stack}>
        {sectionWrittenFields.map((field) => (
          <ReportText key={field.id} field={field} text={section.report[field.id] ?? ""} onText={onText} />
        ))}
        <p className={styles.small}>
          Taken from the bead, the photo and the drawing:{" "}
          {known.map(({ title }) => title.toLowerCase()).join(", ")}. The examiner signs on the paper, or the
          inspection that the bead belongs to. The list is ours from memory; the standard’s own decides.
        </p>
      </div>
    </details>
  );
}

function ReportText({
  field,
  text,
  onText,
}: {
  field: ReportField;
  text: string;
  onText: (field: string, text: string) => void;
}) {
  const typed = useTypedText(text, (next) => onText(field.id, next));
  return (
    <Field label={field.title} hint={field.hint}>
      {(ids) => (
        <input
          {...ids}
          value={typed.value}
          maxLength={500}
          autoComplete="off"
          onChange={(event) => typed.onChange(event.target.value)}
          onBlur={typed.onBlur}
        />
      )}
    </Field>
  );
}
