import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { SideBySide } from "@/components/report";
import { Header } from "@/components/shell";
import { buttonClass, form, page } from "@/components/ui";
import { getBead, type BeadRecord } from "@/lib/beads";
import { findPage, readFilter } from "@/lib/find";
import { compareSides } from "../_door/compare-sides";
import { beadPageFor, ownOnly, pageFor, type Here } from "../_door/here";
import { asParams } from "../filter-questions";
import styles from "./compare.module.css";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Compare two beads" };

interface Props {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** Offered to choose from at once. */
const OFFERED = 24;

/** Any two beads, or two photos of one, laid side by side: ticked in the list, or one of them chosen here. */
export default async function ComparePage({ searchParams }: Props) {
  const params = asParams(await searchParams);
  const picks = params.getAll("pick");
  const [first, second] = picks;
  if (first === undefined || second === undefined) return <Choose first={first ?? null} params={params} />;
  const now = await beadPageFor("bead.read", first);
  await beadPageFor("bead.read", second);
  const [before, after] = [await getBead(now.db, first), await getBead(now.db, second)];
  if (!before || !after) notFound();
  const photos = { before: photoAsked(params, "photo"), after: photoAsked(params, "other") };
  const sides = await compareSides(now.db, before, after, photos);
  return (
    <>
      <Header>
        <Link href="/">All beads</Link>
      </Header>
      <SideBySide
        {...sides}
        tried={null}
        outcome={null}
        choose={
          <>
            {picks.length > 2 && (
              <p className={page.notice}>
                {picks.length} were ticked: these are the first two. Tick two to choose which.
              </p>
            )}
            <Others {...{ before, after, photos }} />
          </>
        }
      />
    </>
  );
}

/** Photos are counted from 1 in an address, as on the screen. */
function photoAsked(params: URLSearchParams, name: string): number | undefined {
  const asked = Number(params.get(name));
  return Number.isInteger(asked) && asked >= 1 ? asked - 1 : undefined;
}

/** Other photos of the two, the two turned round, another bead instead. */
function Others({
  before,
  after,
  photos,
}: {
  before: BeadRecord;
  after: BeadRecord;
  photos: { readonly before?: number | undefined; readonly after?: number | undefined };
}) {
  const pairs = [
    ["photo", before, photos.before],
    ["other", after, photos.after],
  ] as const;
  const hasMore = before.photos.length > 1 || after.photos.length > 1;
  return (
    <form method="get" className={styles.others}>
      <input type="hidden" name="pick" value={before.id} />
      <input type="hidden" name="pick" value={after.id} />
      {hasMore &&
        pairs.map(([name, bead, asked]) => (
          <label key={name}>
            Photo of bead {bead.number}
            <select name={name} defaultValue={asked === undefined ? "" : String(asked + 1)}>
              <option value="">the one that says most</option>
              {bead.content.photos.map(({ id, role }, i) => (
                <option key={id} value={i + 1}>
                  {i + 1}, {role}
                </option>
              ))}
            </select>
          </label>
        ))}
      {hasMore && (
        <button type="submit" className={buttonClass()}>
          Show these photos
        </button>
      )}
      <Link className={buttonClass()} href={`/compare?pick=${after.id}&pick=${before.id}`}>
        The other way round
      </Link>
      <Link className={buttonClass()} href={`/compare?pick=${before.id}`}>
        Another beside bead {before.number}
      </Link>
    </form>
  );
}

/** Which bead, or which other one. */
async function Choose({ first, params }: { first: string | null; params: URLSearchParams }) {
  const now = first === null ? await pageFor("bead.read") : await beadPageFor("bead.read", first);
  const bead = first === null ? null : await getBead(now.db, first);
  if (first !== null && bead === null) notFound();
  const q = params.get("q") ?? "";
  const beads = await offered(now, q);
  const beside = bead ? `pick=${bead.id}&` : "";
  return (
    <>
      <Header>
        <Link href={bead ? `/beads/${bead.id}` : "/"}>{bead ? "Back to the bead" : "All beads"}</Link>
      </Header>
      <main className={page.page}>
        <h1>{bead ? `Which beside bead ${bead.number}?` : "Which two beads?"}</h1>
        <p>
          {bead
            ? `${bead.content.title}. The same bead again lays two of its photos side by side.`
            : "Choose the first, then the one to lay beside it."}
        </p>
        <form method="get" className={form.row} role="search">
          {bead && <input type="hidden" name="pick" value={bead.id} />}
          <input
            name="q"
            type="search"
            defaultValue={q}
            aria-label="Words, or # and a number"
            placeholder="Words, or #12"
          />
          <button type="submit" className={buttonClass()}>
            Find
          </button>
        </form>
        {beads.length === 0 ? (
          <p>No bead fits that.</p>
        ) : (
          <ul className={styles.list}>
            {beads.map(({ id, number, title, thumbSha256 }) => (
              <li key={id}>
                <Link href={`/compare?${beside}pick=${id}`} className={styles.bead}>
                  {thumbSha256 ? (
                    <img src={`/api/photos/${thumbSha256}/thumb`} alt="" loading="lazy" />
                  ) : (
                    <span />
                  )}
                  <strong>{number}</strong> {title}
                </Link>
              </li>
            ))}
          </ul>
        )}
      </main>
    </>
  );
}

/** The newest, or those that words find, as far as this person may see them. */
async function offered({ db, actor }: Here, q: string) {
  const { filter } = readFilter(new URLSearchParams(q === "" ? "" : { q }));
  const { beads } = await findPage(db, filter, ownOnly(actor), { at: "start", size: OFFERED });
  return beads;
}
