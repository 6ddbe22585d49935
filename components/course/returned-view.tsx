import { LocalTime, page, Panel } from "@/components/ui";
import { itemsOver, rubricScore, scoreText, stepWords, type ReturnedFeedback } from "@/lib/course";
import { LayeredPhoto } from "@/components/layer";
import { Seen } from "./seen";

/** Feedback as it was returned: read from the frozen text and nothing else. */
export function ReturnedView({
  returned,
  digest,
  returnedAt,
  photoSrc,
  seen = null,
}: {
  returned: ReturnedFeedback;
  digest: string;
  /** ISO 8601, UTC. */
  returnedAt: string;
  photoSrc: (sha256: string) => string;
  /** Told when it is on the screen of whom it is for. */
  seen?: (() => Promise<unknown>) | null;
}) {
  const { rubric, marks, quick, remark, photos, layers } = returned;
  const score = scoreText(rubricScore(rubric, marks));
  return (
    <>
      {seen && <Seen tell={seen} />}
      {photos.map((photo, i) => (
        <LayeredPhoto
          key={photo.id}
          src={photoSrc(photo.sha256)}
          widthPx={photo.widthPx}
          heightPx={photo.heightPx}
          drawing={photo.drawing}
          items={itemsOver(layers, photo.id)}
          name={`Photo ${i + 1}, ${photo.role}`}
        />
      ))}
      <div className={page.columns}>
        <Panel title="Your instructor says" tone="ok">
          {quick.length > 0 && (
            <ul>
              {quick.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          )}
          {remark.trim() !== "" && <p className={page.words}>{remark}</p>}
          {quick.length === 0 && remark.trim() === "" && <p>See the marks on the photo.</p>}
        </Panel>
        {rubric.length > 0 && (
          <Panel title="Rubric" tone="purple" aside={<strong>{score}</strong>}>
            <table className={page.plainTable}>
              <thead>
                <tr>
                  <th scope="col">Line</th>
                  <th scope="col">Weight</th>
                  <th scope="col">Reached</th>
                </tr>
              </thead>
              <tbody>
                {rubric.map(({ id, title, weight }) => (
                  <tr key={id}>
                    <th scope="row">{title}</th>
                    <td>{weight}</td>
                    <td>{markWords(marks[id])}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Panel>
        )}
      </div>
      <p className={page.note}>
        Returned <LocalTime iso={returnedAt} />, frozen.{" "}
        <span className={page.address}>SHA-256 {digest.slice(0, 16)}…</span>
      </p>
    </>
  );
}

export function markWords(mark: ReturnedFeedback["marks"][string] | undefined): string {
  if (mark === undefined) return "not marked";
  return mark === "left-out" ? "does not apply" : `${mark} of 4, ${stepWords[mark]}`;
}
