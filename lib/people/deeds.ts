import type { Role } from "./roles";

/** Everything somebody may be refused. `area.deed`. */
export const deeds = [
  "bead.read",
  "bead.write",
  "bead.create",
  "bead.delete",
  "exercise.hand-in",
  "feedback.read",
  "feedback.write",
  "feedback.reply",
  "course.read",
  "course.write",
  "people.read",
  "people.manage",
  "job.read",
  "job.write",
  "record.read",
  "record.sign",
  "criteria.write",
  "trends.read",
  "data.export",
  "data.import",
  "log.read",
  "settings.write",
  "token.manage",
  "data.keep",
] as const;
export type Deed = (typeof deeds)[number];

/** "all": anybody's; "own": only what belongs to the person themselves. A deed that is not named is refused. */
export type Reach = "all" | "own";

type Rights = Readonly<Partial<Record<Deed, Reach>>>;

const ownerRights: Rights = Object.fromEntries(
  // Signing is the inspector's alone: whoever keeps the machine must not be able to put a name to a record.
  deeds.filter((deed) => deed !== "record.sign").map((deed) => [deed, "all"] as const),
);

export const rights: Readonly<Record<Role, Rights>> = {
  owner: ownerRights,
  instructor: {
    "bead.read": "all",
    "bead.write": "all",
    "bead.create": "all",
    "bead.delete": "all",
    "exercise.hand-in": "all",
    "feedback.read": "all",
    "feedback.write": "all",
    "course.read": "all",
    "course.write": "all",
    "people.read": "all",
    "criteria.write": "all",
    "trends.read": "all",
    "data.export": "all",
    "settings.write": "all",
    "token.manage": "own",
  },
  inspector: {
    "bead.read": "all",
    "bead.write": "all",
    "bead.create": "all",
    "bead.delete": "all",
    "people.read": "all",
    "job.read": "all",
    "job.write": "all",
    "record.read": "all",
    "record.sign": "own",
    "criteria.write": "all",
    "trends.read": "all",
    "data.export": "all",
    "data.import": "all",
    "log.read": "all",
    "settings.write": "all",
    "token.manage": "own",
  },
  welder: {
    "bead.read": "own",
    "bead.write": "own",
    "bead.create": "own",
    "bead.delete": "own",
    "exercise.hand-in": "own",
    "feedback.read": "own",
    "feedback.reply": "own",
    "trends.read": "own",
    "data.export": "own",
    "token.manage": "own",
  },
};
