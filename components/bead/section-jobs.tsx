import { Chip } from "@/components/ui";
import styles from "./section.module.css";
import type { SectionJob } from "./use-section-desk";

/** One photo, two jobs: fewer tools at a time, and larger ones. */
export function SectionJobs({ job, onJob }: { job: SectionJob; onJob: (job: SectionJob) => void }) {
  return (
    <div className={styles.jobs} role="group" aria-label="What to do on this section">
      <Chip on={job === "section"} onClick={() => onJob("section")}>
        Sizes
      </Chip>
      <Chip on={job === "marks"} onClick={() => onJob("marks")}>
        Imperfections in it
      </Chip>
    </div>
  );
}
