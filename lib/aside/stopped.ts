import { fail, issue, type Issue, type Result } from "@/lib/base";

/**
 * - `aside-memory`: it took more memory than one may.
 * - `aside-time`: it took longer than one may.
 * - `aside-ended`: what makes papers and exports ended, or whoever asked went away.
 */
export type AsideIssue = Issue<"aside-memory" | "aside-time" | "aside-ended">;

/** Thrown where a work aside came to nothing for no fault of its own. */
export class Stopped extends Error {
  constructor(readonly code: AsideIssue["code"]) {
    super(code);
  }
}

export const asideSentences: Readonly<Record<AsideIssue["code"], string>> = {
  "aside-memory":
    "This takes more memory than one paper or export may have here, so it was not made. Ask for fewer beads at a time.",
  "aside-time":
    "This takes longer than one paper or export may here, so it was not made. Ask for fewer beads at a time.",
  "aside-ended": "What makes papers and exports was stopped while it worked on this. Ask once more.",
};

export const asideSentence = ({ code }: AsideIssue): string => asideSentences[code];

/** What came of a work, where it was not stopped; any other failure is thrown on. */
export async function unlessStopped<T>(work: () => Promise<T>): Promise<Result<T, AsideIssue>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (error instanceof Stopped) return fail(issue(error.code));
    throw error;
  }
}
