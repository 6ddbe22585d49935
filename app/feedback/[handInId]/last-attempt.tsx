import Link from "next/link";
import { LocalTime, page } from "@/components/ui";
import { foundByLayers, rubricScore, scoreText, type ReturnedFeedback } from "@/lib/course";
import type { HandInRecord } from "@/lib/classroom";
import { imperfections } from "@/lib/trade";

/** How the try before was answered, so that the next word follows from the last. */
export function LastAttempt({
  handIn,
  returned,
}: {
  handIn: HandInRecord | null;
  returned: ReturnedFeedback | null;
}) {
  const [photo] = returned?.photos ?? [];
  const found = returned ? foundByLayers(returned.layers).map((id) => imperfections[id].name) : [];
  return (
    <section aria-label="The attempt before">
      <h2>The attempt before</h2>
      {!handIn && <p>This is the first.</p>}
      {handIn && (
        <p>
          <Link href={`/feedback/${handIn.id}`}>
            Attempt {handIn.attempt}, <LocalTime iso={handIn.handedInAt} only="day" />
          </Link>
          {returned && `: ${scoreText(rubricScore(returned.rubric, returned.marks))}`}
          {handIn && !returned && ": not answered"}
        </p>
      )}
      {found.length > 0 && <p>Found: {found.join(", ")}.</p>}
      {returned && <p className={page.words}>{[...returned.quick, returned.remark.trim()].join(" ")}</p>}
      {photo && (
        <img className={page.thumb} src={`/api/photos/${photo.sha256}/thumb`} alt="" loading="lazy" />
      )}
    </section>
  );
}
