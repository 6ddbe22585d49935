import Link from "next/link";
import { Panel } from "@/components/ui";
import { layPair, type AlignedPhoto, type LaidPhoto, type TriedChange } from "@/lib/assess";
import type { ComparedMark, Comparison, SheetDocument } from "@/lib/report";
import type { LengthSystem } from "@/lib/units";
import { alignedWords, LaidPicture, Ruler } from "./side-by-side-photo";
import styles from "./side-by-side.module.css";

interface Side {
  readonly id: string;
  readonly sheet: SheetDocument;
  /** How each photo of the sheet lies along its weld, in their order. */
  readonly aligned: readonly AlignedPhoto[];
}

type SheetPhoto = SheetDocument["photos"][number];

/** A side's picture with what became of it; null: the bead has none. */
type Picture = {
  readonly photo: SheetPhoto;
  readonly aligned: AlignedPhoto;
  readonly laid: LaidPhoto;
} | null;

/**
 * Two beads, the earlier first: photos laid along their welds with the marks, verdicts, what was changed between them
 * and did, what is gone, still there and new.
 */
export function SideBySide({
  before,
  after,
  comparison,
  tried,
  outcome,
  system,
}: {
  before: Side;
  after: Side;
  comparison: Comparison;
  /** What was changed after the first; null where the second was not run after it. */
  tried: TriedChange | null;
  /** The question what it did, or its answer. */
  outcome: React.ReactNode;
  system: LengthSystem;
}) {
  const [was, is, isShared] = pictures(before, after);
  return (
    <main className={styles.main}>
      <h1>
        Bead {before.sheet.number} and bead {after.sheet.number}
      </h1>
      <div className={styles.pair} data-shared={isShared}>
        <Half side={before} picture={was} system={system} />
        <Half side={after} picture={is} system={system} />
      </div>
      {tried && (
        <Panel tone="blue" title="The change between them">
          <p>
            <strong>{tried.sentence}</strong> {tried.step}
          </p>
          {outcome}
        </Panel>
      )}
      <section>
        <h2>What was changed</h2>
        {comparison.setup.length === 0 ? (
          <p>Nothing that is recorded.</p>
        ) : (
          <Table
            heads={["", `Bead ${before.sheet.number}`, `Bead ${after.sheet.number}`]}
            rows={comparison.setup.map(({ label, before: was, after: is }) => [
              label,
              was ?? "not recorded",
              is ?? "not recorded",
            ])}
          />
        )}
      </section>
      <Group title="No longer marked" marks={comparison.gone} />
      <Group title="Still there" marks={comparison.still} />
      <Group title="New" marks={comparison.fresh} />
    </main>
  );
}

/** The photo of a bead that says most here: of its face, and with a weld line to lay it by. */
export function chosenPhoto({ photos }: SheetDocument): SheetPhoto | undefined {
  const faces = photos.filter(({ role }) => role === "face");
  const lined = faces.filter(({ drawing }) => drawing.weldLine !== null);
  return lined.find(({ hasScale }) => hasScale) ?? lined[0] ?? faces[0] ?? photos[0];
}

function pictures(before: Side, after: Side): [Picture, Picture, boolean] {
  const side = ({ sheet, aligned }: Side) => {
    const photo = chosenPhoto(sheet);
    return (
      photo && { ...photo, aligned: aligned[sheet.photos.indexOf(photo)] ?? { kind: "as-taken" as const } }
    );
  };
  const [was, is] = [side(before), side(after)];
  const alone = was ?? is;
  if (!alone) return [null, null, false];
  // A bead without a photo has no say in how the other's is laid.
  const { photos, isShared } = layPair(was ?? alone, is ?? alone);
  return [
    was ? { photo: was, aligned: was.aligned, laid: photos[0] } : null,
    is ? { photo: is, aligned: is.aligned, laid: photos[1] } : null,
    isShared && was !== undefined && is !== undefined,
  ];
}

function Half({
  side: { id, sheet },
  picture,
  system,
}: {
  side: Side;
  picture: Picture;
  system: LengthSystem;
}) {
  return (
    <section className={styles.half}>
      <h2>
        <Link href={`/beads/${id}`}>
          {sheet.number} {sheet.title}
        </Link>
      </h2>
      {picture ? (
        <LaidPicture photo={picture.photo} laid={picture.laid} alt={`Bead ${sheet.number}`} />
      ) : (
        <p>No photo.</p>
      )}
      <div className={styles.below}>
        {picture?.laid.rulerMm && <Ruler rulerMm={picture.laid.rulerMm} system={system} />}
      </div>
      <div className={styles.words}>
        <p>
          Bead {sheet.number}: <strong>{sheet.verdict ? sheet.verdict.word : "no criteria chosen"}</strong>
          {sheet.verdict ? `, ${sheet.verdict.criteria}` : ""}
        </p>
        {picture && (
          <p className={styles.note}>
            {alignedWords(picture.aligned, picture.photo.hasScale)}
            {picture.laid.rulerMm &&
              ` Ruler in ${system === "metric" ? "mm" : "inches"} from the weld’s start.`}
          </p>
        )}
      </div>
    </section>
  );
}

function Group({ title, marks }: { title: string; marks: readonly ComparedMark[] }) {
  return (
    <section>
      <h2>{title}</h2>
      {marks.length === 0 ? (
        <p>None.</p>
      ) : (
        <Table
          heads={["", "Before", "After"]}
          rows={marks.map(({ name, before, after }) => [
            name,
            before?.join("; ") ?? "not marked",
            after?.join("; ") ?? "not marked",
          ])}
        />
      )}
    </section>
  );
}

function Table({ heads, rows }: { heads: readonly string[]; rows: readonly (readonly string[])[] }) {
  return (
    <table className={styles.table}>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, ...cells]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {cells.map((cell, i) => (
              <td key={i}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
