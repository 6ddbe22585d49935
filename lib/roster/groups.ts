import { randomBytes } from "node:crypto";
import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import type { Role } from "@/lib/people";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { personColumns, PersonSchema, refuseTakenMark, roleWords } from "./people";
import { rosterLines, type RosterLine } from "./roster-lines";

export interface StudentRecord {
  readonly id: string;
  readonly name: string;
  readonly mark: string | null;
}

export interface GroupRecord {
  readonly id: string;
  readonly name: string;
  /** ISO 8601, UTC; null while the group runs. */
  readonly closedAt: string | null;
  /** By name; people who were removed are not among them. */
  readonly members: readonly (StudentRecord & { readonly hasAccount: boolean })[];
  readonly exercises: number;
}

const GroupNameSchema = z.string().trim().min(1).max(80);
const withMembers = {
  members: { include: { person: true } },
  _count: { select: { exercises: true } },
} as const;

type GroupRow = NonNullable<Awaited<ReturnType<typeof findGroup>>>;
const findGroup = (db: Db, id: string) => db.group.findUnique({ where: { id }, include: withMembers });

function toGroup(row: GroupRow): GroupRecord {
  const members = row.members
    .flatMap(({ person: { id, name, mark, userId } }) =>
      name === null ? [] : [{ id, name, mark, hasAccount: userId !== null }],
    )
    .sort((a, b) => a.name.localeCompare(b.name));
  return {
    id: row.id,
    name: row.name,
    closedAt: row.closedAt?.toISOString() ?? null,
    members,
    exercises: row._count.exercises,
  };
}

/** Every group, running ones first, by name. */
export async function listGroups(db: Db): Promise<readonly GroupRecord[]> {
  const rows = await db.group.findMany({ include: withMembers, orderBy: { name: "asc" } });
  return rows.map(toGroup).sort((a, b) => Number(a.closedAt !== null) - Number(b.closedAt !== null));
}

export async function getGroup(db: Db, id: string): Promise<GroupRecord | null> {
  const row = await findGroup(db, id);
  return row ? toGroup(row) : null;
}

export async function createGroup(pen: Pen, name: unknown): Promise<Result<{ id: string }, RecordIssue>> {
  const parsed = GroupNameSchema.safeParse(name);
  if (!parsed.success) return fail(issue("group-name-missing", ["name"]));
  return writing(pen, async (tx, log) => {
    if (await tx.group.findUnique({ where: { name: parsed.data } }))
      return fail(issue("group-name-taken", ["name"]));
    const { id } = await tx.group.create({ data: { id: newId(), name: parsed.data } });
    await log(`group:${id}`, "group.made");
    return ok({ id });
  });
}

/** Closes a group that has ended, or opens it again. Its exercises keep their own state. */
export async function closeGroup(
  pen: Pen,
  id: string,
  closedAt: Date | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.group.updateMany({ where: { id }, data: { closedAt } });
    if (count === 0) return fail(issue("group-gone"));
    await log(`group:${id}`, closedAt ? "group.closed" : "group.opened");
    return ok(null);
  });
}

const StudentSchema = PersonSchema.pick({ name: true, mark: true });

/** A new person of role "welder", without account, put into a group. `mark` null: none. */
export async function addStudent(
  pen: Pen,
  groupId: string,
  input: unknown,
): Promise<Result<StudentRecord, RecordIssue>> {
  const parsed = StudentSchema.safeParse(input);
  if (!parsed.success)
    return fail(issue("person-not-understood", parsed.error.issues[0]?.path.map(String) ?? []));
  return writing(pen, async (tx, log) => {
    if (!(await tx.group.findUnique({ where: { id: groupId } }))) return fail(issue("group-gone"));
    const { name, mark } = parsed.data;
    const free = await refuseTakenMark(tx, mark, null);
    if (!free.ok) return free;
    const id = newId();
    await tx.person.create({
      data: { id, name, mark, role: "welder", salt: randomBytes(16).toString("hex") },
    });
    await tx.groupMember.create({ data: { groupId, personId: id } });
    await log(`person:${id}`, "person.added", { role: "welder" });
    await log(`group:${groupId}`, "group.member-added", { person: id });
    return ok({ id, name, mark });
  });
}

/** Most students of one pasted list. */
const MOST_PASTED = 200;

/** A line as a person, a student where no role is named. */
const inputOf = ({ name, mark, roles }: RosterLine) => {
  const [role = "welder", ...also] = roles ?? [];
  return { name, mark, role, also };
};

/**
 * A pasted list of people into a group, all of them or none. Whoever is in the group by that name already is left as they
 * are, so that a list may be pasted again with those who came later. `mayGive`: which roles whoever pastes may give.
 */
export async function addRoster(
  pen: Pen,
  groupId: string,
  text: string,
  mayGive: (role: Role) => boolean = (role) => role === "welder",
): Promise<Result<{ readonly added: number }, RecordIssue>> {
  const lines = rosterLines(text);
  if (lines.length === 0 || lines.length > MOST_PASTED) return fail(issue("roster-not-understood"));
  return writing(pen, async (tx, log) => {
    const group = await tx.group.findUnique({ where: { id: groupId }, include: withMembers });
    if (!group) return fail(issue("group-gone"));
    const here = new Set(group.members.map(({ person }) => person.name?.toLowerCase()));
    const fresh: ({ readonly id: string } & ReturnType<typeof personColumns>)[] = [];
    // All are looked at before the first is written: a refusal takes nothing back.
    for (const line of lines) {
      if (here.has(line.name.toLowerCase())) continue;
      const student = PersonSchema.safeParse(inputOf(line));
      if (!student.success || line.roles === null)
        return fail(issue("roster-not-understood", [], { name: line.name }));
      if (!line.roles.every(mayGive)) return fail(issue("roster-roles", [], { name: line.name }));
      const { mark } = student.data;
      const free = await refuseTakenMark(tx, mark, null);
      if (!free.ok) return free;
      if (mark !== null && fresh.some((one) => one.mark?.toLowerCase() === mark.toLowerCase()))
        return fail(issue("mark-taken", ["mark"], { mark }));
      here.add(line.name.toLowerCase());
      fresh.push({ id: newId(), ...personColumns(student.data) });
    }
    for (const student of fresh) {
      const salt = randomBytes(16).toString("hex");
      await tx.person.create({ data: { ...student, salt } });
      await tx.groupMember.create({ data: { groupId, personId: student.id } });
      await log(`person:${student.id}`, "person.added", roleWords(student));
    }
    const added = fresh.length;
    await log(`group:${groupId}`, "group.roster-added", { added });
    return ok({ added });
  });
}

/** Puts somebody who is already known into a group; being in it already is no change. */
export async function joinGroup(
  pen: Pen,
  groupId: string,
  personId: string,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const person = await tx.person.findFirst({ where: { id: personId, removedAt: null } });
    if (!person) return fail(issue("person-gone"));
    if (!(await tx.group.findUnique({ where: { id: groupId } }))) return fail(issue("group-gone"));
    const key = { groupId_personId: { groupId, personId } };
    if (await tx.groupMember.findUnique({ where: key })) return ok(null);
    await tx.groupMember.create({ data: { groupId, personId } });
    await log(`group:${groupId}`, "group.member-added", { person: personId });
    return ok(null);
  });
}

/** Takes somebody out of a group. The person, their beads and what they handed in stay. */
export async function leaveGroup(
  pen: Pen,
  groupId: string,
  personId: string,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.groupMember.deleteMany({ where: { groupId, personId } });
    if (count === 0) return fail(issue("person-gone"));
    await log(`group:${groupId}`, "group.member-removed", { person: personId });
    return ok(null);
  });
}
