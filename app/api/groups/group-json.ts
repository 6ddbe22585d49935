import type { GroupRecord } from "@/lib/roster";

/** A group as the list says it: how many are in it, not who. */
export const groupJson = ({ id, name, closedAt, members, exercises }: GroupRecord) => ({
  ...{ id, name, closedAt, exercises },
  students: members.length,
});
