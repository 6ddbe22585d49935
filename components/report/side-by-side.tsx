import Link from "next/link";
import type { ReactNode } from "react";
import { page, Panel } from "@/components/ui";
import { layPair, type AlignedPhoto, type LaidPhoto, type TriedChange } from "@/lib/assess";
import type { ComparedMark, ComparedSize, Comparison, SheetDocument } from "@/lib/report";
import type { LengthSystem } from "@/lib/units";
import { ComparePictures, type ComparedPicture } from "./compare-pictures";
import { alignedWords, laidParts } from "./side-by-side-photo";
import styles from "./side-by-side.module.css";

interface Side {
  readonly id: string;
  readonly sheet: SheetDocument;
  /** How each photo of the sheet lies along its weld, in their order. */
  readonly aligned: readonly AlignedPhoto[];
  /** The photo to be looked at, counted from 0; left out: the one that says most. */
  readonly photo?: number;
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
  sizes,
  tried,
  outcome,
  choose,
  system,
}: {
  before: Side;
  after: Side;
  comparison: Comparison;
  sizes: readonly ComparedSize[];
  /** What was changed after the first; null where the second was not run after it. */
  tried: TriedChange | null;
  /** The question what it did, or its answer; null where there was no change. */
  outcome: ReactNode;
  /** The choice of other photos, or of other beads. */
  choose?: ReactNode;
  system: LengthSystem;
}) {
  const [was, is, isShared] = pictures(before, after);
  return (
    <main className={styles.main}>
      <h1>
        Bead {before.sheet.number} and bead {after.sheet.number}
      </h1>
      {choose}
      <ComparePictures
        before={compared(before, was, system)}
        after={compared(after, is, system)}
        mayLieOver={[was, is].every((one) => one !== null && one.aligned.kind !== "as-taken")}
        {...{ isShared, system }}
      />
      <SizeTable before={before} after={after} sizes={sizes} />
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
  const side = (one: Side) => {
    const { sheet, aligned } = one;
    const photo = (one.photo === undefined ? undefined : sheet.photos[one.photo]) ?? chosenPhoto(sheet);
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

function compared({ id, sheet }: Side, picture: Picture, system: LengthSystem): ComparedPicture {
  const name = `Bead ${sheet.number}`;
  return {
    name,
    heading: (
      <Link href={`/beads/${id}`}>
        {sheet.number} {sheet.title}
      </Link>
    ),
    laid: picture && laidParts(picture.photo, picture.laid, name),
    rulerMm: picture?.laid.rulerMm ?? null,
    words: (
      <>
        <p>
          {name}: <strong>{sheet.verdict ? sheet.verdict.word : "no criteria chosen"}</strong>
          {sheet.verdict ? `, ${sheet.verdict.criteria}` : ""}
        </p>
        {picture && (
          <p className={styles.note}>
            {alignedWords(picture.aligned, picture.photo.hasScale)}
            {picture.laid.rulerMm &&
              ` Ruler in ${system === "metric" ? "mm" : "inches"} from the weld’s start.`}
          </p>
        )}
      </>
    ),
  };
}

/** Sizes of both and how far they differ; a difference inside its doubt is none that is seen. */
function SizeTable({ before, after, sizes }: { before: Side; after: Side; sizes: readonly ComparedSize[] }) {
  return (
    <section>
      <h2>Sizes</h2>
      {sizes.length === 0 ? (
        <p>Nothing on either was measured: set a scale, or enter a reading.</p>
      ) : (
        <div className={page.scroll} role="region" aria-label="Sizes of both" tabIndex={0}>
          <Table
            heads={["", `Bead ${before.sheet.number}`, `Bead ${after.sheet.number}`, "Difference"]}
            rows={sizes.map((row) => [row.label, row.before ?? "–", row.after ?? "–", row.difference])}
          />
        </div>
      )}
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
