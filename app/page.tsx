import Link from "next/link";
import {
  BeadCard,
  BeadTable,
  ChoosePage,
  ChosenBar,
  ExportBar,
  FilterPanel,
  FirstBeadOffer,
  SavedFilters,
  ViewSwitch,
} from "@/components/beads";
import { LeftHere } from "@/components/offline";
import { Header, UnitSwitch } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import {
  countSome,
  filterQuery,
  findPage,
  listSavedFilters,
  readFilter,
  recordedChoices,
  type BeadFilter,
  type ListedBead,
  type PageAt,
  type Scope,
} from "@/lib/find";
import { staleBeads, workInBackground } from "@/lib/beads";
import { assessContext, type ShopContext } from "@/lib/shop";
import { summariseCard, type BeadSummary } from "@/lib/report";
import { canGuide, isDemoThere } from "@/lib/demo";
import { beginFirstBeadAction, chooseUnitsAction } from "./beads/actions";
import {
  attachBeadsAction,
  chooseListViewAction,
  deleteBeadsAction,
  restoreBeadsAction,
  weldChoicesAction,
} from "./beads/bulk-actions";
import { Desks } from "./desks";
import { deleteFilterAction, saveFilterAction } from "./exports/actions";
import { asParams, askedFor, filterQuestions, hiddenParts, many, staleLine } from "./filter-questions";
import { currentUnits } from "./_door/current-units";
import { ownOnly, pageFor, type Here } from "./_door/here";
import { currentListView } from "./_door/list-view";
import { tableColumns } from "./list-columns";
import styles from "./page.module.css";
import { Waiting } from "./waiting";

export const dynamic = "force-dynamic";

/** Cards on one page. */
const ON_A_PAGE = 48;

interface Search {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function BeadsPage({ searchParams }: Search) {
  const now = await pageFor("bead.read");
  const params = asParams(await searchParams);
  const read = readFilter(params);
  const list = await listOf(now, read.filter, params);
  const { counts, context, cards, stale } = list;
  const query = filterQuery(read.filter);
  return (
    <>
      <Header>
        <UnitSwitch choice={list.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <h1>Beads</h1>
            <CountLine counts={counts} filter={read.filter} query={query} />
            <DemoOffer now={now} />
          </div>
        </div>
        <Desks actor={now.actor} />
        <LeftHere />
        {now.may("bead.create") && canGuide() && <FirstBeadOffer onBegin={beginFirstBeadAction} />}
        <Waiting now={now} />
        {stale > 0 && <p className={page.notice}>{staleLine(stale)}</p>}
        {counts.all.count > 0 && <Finding {...{ now, read, counts, context }} />}
        {cards.length === 0 ? (
          <p className={page.sum}>
            {counts.all.count === 0
              ? "Run a bead, chip the slag, and press New bead to photograph it."
              : "No bead fits all of this. Take a filter off."}
          </p>
        ) : (
          <Listed cards={cards} filter={read.filter} />
        )}
        <Pages next={list.next} previous={list.previous} query={query} />
        {now.may("bead.delete") && (
          <p>
            <Link href="/beads/deleted">Deleted beads</Link>
          </p>
        )}
        <Acts now={now} />
      </main>
    </>
  );
}

/** The page of the list as whoever looks has it, and how to choose and to turn it. */
async function Listed({ cards, filter }: { cards: readonly BeadSummary[]; filter: BeadFilter }) {
  const view = await currentListView();
  return (
    <>
      <div className={styles.turn}>
        <ChoosePage beads={cards.map(({ id, number }) => ({ id, number }))} />
        <ViewSwitch choice={view} onChoose={chooseListViewAction} />
      </div>
      {view === "table" ? (
        <BeadTable beads={cards} columns={tableColumns(filter)} />
      ) : (
        <ul className={styles.list}>
          {cards.map((bead, i) => (
            <BeadCard key={bead.id} bead={bead} choose order={i} />
          ))}
        </ul>
      )}
    </>
  );
}

/** Whoever sees the list may lay two beads side by side; the other acts are offered to those whose they are. */
function Acts({ now }: { now: Here }) {
  return (
    <ChosenBar
      acts={{
        export: now.may("data.export"),
        remove: now.may("bead.delete") ? { remove: deleteBeadsAction, bringBack: restoreBeadsAction } : null,
        weld: now.may("job.write") ? { choices: weldChoicesAction, attach: attachBeadsAction } : null,
      }}
    />
  );
}

type Counts = Awaited<ReturnType<typeof countSome>>;

/** Where the address begins the page: behind a bead, before one, at the end, or at the start. */
function pageAt(params: URLSearchParams): PageAt {
  const [after, before] = [params.get("after"), params.get("before")];
  if (after) return { after };
  if (before) return { before };
  return params.get("page") === "last" ? "end" : "start";
}

/** One page of cards. What of it is being worked out again comes first in the background. */
async function listOf(now: Here, filter: ReturnType<typeof readFilter>["filter"], params: URLSearchParams) {
  const at = pageAt(params);
  const scope: Scope = ownOnly(now.actor);
  const [units, context, counts, stale] = await Promise.all([
    currentUnits(),
    assessContext(now.db),
    countSome(now.db, filter, scope, params.get("count") === "all" ? Infinity : undefined),
    staleBeads(now.db, scope),
  ]);
  const { beads, next, previous } = await findPage(now.db, filter, scope, { at, size: ON_A_PAGE });
  const cards = beads.map((bead) => cardOf(bead, context, units.preferences));
  const again = cards.filter((card) => card.again !== "nothing").map(({ number }) => number);
  if (stale > 0 || again.length > 0) workInBackground(now.db, again);
  return { choice: units.choice, context, counts, stale, cards, next, previous };
}

function cardOf(
  bead: ListedBead,
  context: ShopContext,
  units: Parameters<typeof summariseCard>[2],
): BeadSummary {
  const { said } = bead;
  return summariseCard(bead, said && { ...said, adviceStands: said.weighedBy === context.weighedBy }, units);
}

/** Offered as long as there is something of it. */
async function DemoOffer({ now }: { now: Here }) {
  if (!now.may("people.manage") || !(await isDemoThere(now.db))) return null;
  return (
    <p>
      This is a demo shop, invented to look around in. <Link href="/demo">Clear it and begin empty</Link>
    </p>
  );
}

/** Words and filters, what of them is kept for another day, and the way out with what they found. */
async function Finding({
  now,
  read: { filter, unread },
  counts: { found },
  context: { shopSets },
}: {
  now: Here;
  read: ReturnType<typeof readFilter>;
  counts: Counts;
  context: ShopContext;
}) {
  const [saved, choices, { preferences: units }] = await Promise.all([
    listSavedFilters(now.db),
    recordedChoices(now.db, ownOnly(now.actor)),
    currentUnits(),
  ]);
  const query = filterQuery(filter);
  const mayKeep = now.may("settings.write");
  return (
    <div className={styles.find}>
      <FilterPanel
        // A form keeps what was typed into it; another address is another form.
        key={query}
        action="/"
        words={filter.q ?? ""}
        questions={filterQuestions(filter, choices, { sort: true, shopSets, units })}
        asked={askedFor(filter, "/", { shopSets, units })}
        hidden={hiddenParts({ ...many(filter), job: filter.job })}
      />
      {unread.length > 0 && (
        <p className={styles.unread} role="alert">
          This address asks for something that could not be read ({unread.join(", ")}); it was left out.
        </p>
      )}
      <SavedFilters
        saved={saved.map(({ id, name, filter }) => ({ id, name, href: `/?${filterQuery(filter)}` }))}
        onSave={mayKeep && isNarrowed(filter) ? saveFilterAction.bind(null, query) : null}
        onDelete={mayKeep ? deleteFilterAction : null}
      />
      {now.may("data.export") && found.count > 0 && (
        <ExportBar count={found.isMore ? null : found.count} hidden={hiddenParts(filter)} />
      )}
    </div>
  );
}

/** How many there are; counting many exactly takes a moment, so it waits until somebody wants to know. */
function CountLine({ counts, filter, query }: { counts: Counts; filter: BeadFilter; query: string }) {
  return (
    <p role="status">
      {countLine(counts, filter)}{" "}
      {counts.found.isMore && (
        <Link href={`/?${[query, "count=all"].filter(Boolean).join("&")}`}>Count them</Link>
      )}
    </p>
  );
}

function countLine({ found, all }: Counts, filter: BeadFilter): string {
  if (all.count === 0) return "Nothing recorded yet.";
  if (isNarrowed(filter)) {
    const of = all.isMore ? `more than ${all.count}` : all.count;
    return found.isMore ? `More than ${found.count} fit.` : `${found.count} of ${of} fit.`;
  }
  const there = all.isMore ? `More than ${all.count} recorded` : `${all.count} recorded`;
  return (filter.sort ?? "newest") === "newest" ? `${there}, newest first.` : `${there}.`;
}

/** Whether some are left out; an order leaves out none. */
const isNarrowed = ({ sort: _, ...asked }: BeadFilter): boolean => filterQuery(asked) !== "";

function Pages({ next, previous, query }: { next: string | null; previous: string | null; query: string }) {
  const href = (part: string): string => `/?${[query, part].filter(Boolean).join("&")}`;
  if (next === null && previous === null) return null;
  return (
    <nav className={styles.pages} aria-label="Pages of the list">
      {previous !== null && (
        <>
          <Link className={buttonClass()} href={href("")}>
            First page
          </Link>
          <Link className={buttonClass()} href={href(`before=${previous}`)}>
            Page before
          </Link>
        </>
      )}
      {next !== null && (
        <>
          <Link className={buttonClass()} href={href(`after=${next}`)}>
            Next page
          </Link>
          <Link className={buttonClass()} href={href("page=last")}>
            Last page
          </Link>
        </>
      )}
    </nav>
  );
}
