/** What somebody may be here. One person has one role that leads, and further ones where they do more than one job. */
export const roles = ["owner", "instructor", "inspector", "welder"] as const;
export type Role = (typeof roles)[number];

export const roleNames: Readonly<Record<Role, string>> = {
  owner: "Owner",
  instructor: "Instructor",
  inspector: "Inspector",
  welder: "Student or welder",
};

/** One line per role for whoever gives it. */
export const roleDuties: Readonly<Record<Role, string>> = {
  owner: "Keeps people, settings and the log. Sees everything, signs nothing.",
  instructor: "Keeps groups and exercises, sees every student's beads, gives feedback.",
  inspector: "Keeps jobs and instruments, signs inspection records.",
  welder: "Sees and changes only their own beads, hands in, reads their feedback.",
};
