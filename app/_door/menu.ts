import type { MainPlace, MenuPlace } from "@/components/shell";
import { heldRoles, personIdOf, reach, type Actor, type Deed, type Role } from "@/lib/people";

interface Place extends MenuPlace {
  /** The deed that opens it. */
  readonly deed: Deed;
  /** Only for those with a role whom the deed reaches no further than themselves. */
  readonly own?: true;
  /** How it is shown where it is always in sight. */
  readonly sight?: Pick<MainPlace, "short" | "icon">;
}

/** Every page that the menu leads to. */
const places: readonly Place[] = [
  { href: "/", name: "Beads", deed: "bead.read", sight: { short: "Beads", icon: "beads" } },
  { href: "/plan", name: "Plan a run", deed: "bead.read", sight: { short: "Plan", icon: "plan" } },
  {
    href: "/groups",
    name: "Groups and exercises",
    deed: "course.read",
    sight: { short: "Classes", icon: "course" },
  },
  {
    href: "/feedback",
    name: "Handed in",
    deed: "feedback.write",
    sight: { short: "Handed in", icon: "feedback" },
  },
  { href: "/students", name: "Students", deed: "course.read" },
  {
    href: "/students",
    name: "Your exercises",
    deed: "exercise.hand-in",
    own: true,
    sight: { short: "Exercises", icon: "exercises" },
  },
  { href: "/jobs", name: "Jobs and inspections", deed: "job.read", sight: { short: "Jobs", icon: "jobs" } },
  { href: "/criteria", name: "Criteria", deed: "bead.read", sight: { short: "Criteria", icon: "criteria" } },
  { href: "/instruments", name: "Instruments", deed: "job.read" },
  { href: "/trends", name: "Trends", deed: "trends.read", sight: { short: "Trends", icon: "trends" } },
  {
    href: "/atlas",
    name: "Atlas of imperfections",
    deed: "bead.read",
    sight: { short: "Atlas", icon: "atlas" },
  },
  { href: "/eye", name: "Training of the eye", deed: "bead.create" },
  { href: "/trials", name: "Trials", deed: "bead.read" },
  { href: "/cards", name: "Procedure cards", deed: "bead.read" },
  { href: "/strip", name: "Scale strip to print", deed: "bead.read" },
  { href: "/exports", name: "Export", deed: "data.export" },
  { href: "/imports", name: "Import", deed: "data.import" },
  { href: "/people", name: "People", deed: "people.read" },
  { href: "/tokens", name: "Tokens", deed: "token.manage" },
  { href: "/log", name: "Log", deed: "log.read" },
  { href: "/keys", name: "Keys", deed: "log.read" },
  { href: "/backups", name: "Backups", deed: "data.keep" },
];

/** What each role comes back to every day, in the order of use: at most four. Its own desk stands second. */
const inSight: Readonly<Record<Role, readonly string[]>> = {
  owner: ["/", "/plan", "/groups", "/trends"],
  instructor: ["/", "/feedback", "/groups", "/trends"],
  inspector: ["/", "/jobs", "/trends", "/criteria"],
  welder: ["/", "/students", "/plan", "/atlas"],
};

export interface MenuPlaces {
  readonly main: readonly MainPlace[];
  readonly more: readonly MenuPlace[];
  readonly mayStart: boolean;
}

/** Most places in sight of somebody with several roles. */
const MOST_IN_SIGHT = 5;

/** Each role of an actor as an actor of its own; the actor where there are no roles to tell apart. */
const eachRole = (actor: Actor): readonly Actor[] =>
  actor.kind === "person" ? heldRoles(actor).map((role) => ({ ...actor, role, also: [] })) : [actor];

/** The daily places of an actor's roles by turns, the leading role's first: no desk is left out for another's fourth. */
function dailyOf(actor: Actor): readonly string[] {
  const each = (actor.kind === "person" ? heldRoles(actor) : ["owner" as const]).map((role) => inSight[role]);
  const turns = Math.max(...each.map(({ length }) => length));
  const inTurn = Array.from({ length: turns }, (_, i) => each.flatMap((hrefs) => hrefs[i] ?? []));
  return [...new Set(inTurn.flat())];
}

/** The places open to an actor, with the address that each has for them. */
function openTo(actor: Actor): ReadonlyMap<Place, string> {
  const open = places.filter(({ deed, own }) =>
    own ? eachRole(actor).some((one) => reach(one, deed) === "own") : reach(actor, deed) !== null,
  );
  const isShared = ({ href, own }: Place): boolean =>
    own === true && open.some((other) => other.href === href && !other.own);
  // Whoever teaches besides finds everybody at the address that leads a student to their own page.
  return new Map(
    open.map((place) => [place, isShared(place) ? `${place.href}/${personIdOf(actor)}` : place.href]),
  );
}

/** What this actor is offered: the places of every day, and the others. Nothing that is not theirs to open. */
export function menuFor(actor: Actor): MenuPlaces {
  const open = openTo(actor);
  const main = dailyOf(actor).flatMap((daily) => {
    const place = places.find(({ href, sight }) => href === daily && sight !== undefined);
    const href = place && open.get(place);
    return place?.sight && href !== undefined ? [{ href, name: place.name, ...place.sight }] : [];
  });
  const shown = main.slice(0, MOST_IN_SIGHT);
  const more = [...open].filter(([, href]) => !shown.some((place) => place.href === href));
  return {
    main: shown,
    more: more.map(([{ name }, href]) => ({ href, name })),
    mayStart: actor.kind !== "hand-in" && reach(actor, "bead.create") !== null,
  };
}

/** The desk of each role, and what it is called among several. */
const desks: Readonly<Record<Role, MenuPlace>> = {
  owner: { href: "/people", name: "People" },
  instructor: { href: "/feedback", name: "Handed in" },
  inspector: { href: "/jobs", name: "Jobs and inspections" },
  welder: { href: "/students", name: "Your exercises" },
};

/** The desks of somebody with several roles, the leading one's first; nobody else needs to be told. */
export function desksFor(actor: Actor): readonly MenuPlace[] {
  if (actor.kind !== "person" || actor.also.length === 0) return [];
  return heldRoles(actor).map((role) =>
    role === "welder" ? { ...desks.welder, href: `/students/${actor.personId}` } : desks[role],
  );
}
