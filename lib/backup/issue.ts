import { fail, issue, type Issue, type Result } from "@/lib/base";

export type BackupIssue = Issue<
  | "target-not-absolute"
  | "target-used"
  | "target-in-data-folder"
  | "target-of-others"
  | "target-unusable"
  | "target-full"
  | "copies-to-keep-wrong"
  | "hour-wrong"
  | "source-not-here"
  | "source-elsewhere"
  | "source-damaged"
  | "copy-does-not-fit"
  | "backup-running"
  | "backup-missing"
  | "data-folder-used"
  | "data-folder-served"
>;

type Data = BackupIssue["data"];

/** One sentence per expected failure: what happened, and the way on. */
export const backupSentences: Readonly<Record<BackupIssue["code"], (data: Data) => string>> = {
  "target-not-absolute": () =>
    "Name the folder for backups from the root on, such as /mnt/usb/toeline. Nothing was copied.",
  "target-used": ({ folder }) =>
    `${folder} holds something already, so nothing was copied over it. Name a folder that is empty or not there yet.`,
  "target-in-data-folder": ({ folder }) =>
    `${folder} lies inside the data folder or around it. A backup belongs elsewhere, best on another disk.`,
  "target-of-others": ({ folder }) =>
    `Backups of this site lie in ${folder}. Name that folder, or one inside it. Whoever runs the server takes them elsewhere.`,
  "target-unusable": ({ folder, reason }) =>
    `${folder} cannot be written (${reason}), so there is no backup. Check that the disk and the folder are there and that this user may write to them.`,
  "target-full": ({ folder }) =>
    `There is no space left at ${folder}, so there is no backup; what was begun was taken away again. Free some space, keep fewer copies, or name another disk.`,
  "copies-to-keep-wrong": () => "Keep between 1 and 60 copies.",
  "hour-wrong": () => "Give the hour of the night as a number from 0 to 23.",
  "source-not-here": ({ reason }) =>
    `The database could not be copied (${reason}). Nothing was changed; start Toeline once, then try again.`,
  "source-elsewhere": () =>
    "The records lie in PostgreSQL, which is backed up by its own means (pg_dump); this command copies a data folder with its database in it. Copy the photos besides.",
  "source-damaged": ({ reason }) =>
    `The database file is damaged (${reason}), so a copy of it is no backup. Keep the backups you have and restore the last good one into an empty folder: npm run restore -- FOLDER`,
  "copy-does-not-fit": ({ findings, first }) =>
    `The copy does not fit together (${findings === 1 ? "1 finding" : `${findings} findings`}; the first: ${first}) Do not count it as a backup. npm run check-data says what is wrong here and what can be mended.`,
  "backup-running": () => "Another backup of this data folder is being made just now. Wait until it is done.",
  "backup-missing": ({ folder }) =>
    `${folder} holds no finished backup: there is no backup.json in it that can be read. Name the folder that a backup was made into.`,
  "data-folder-used": ({ folder }) =>
    `${folder} is not empty, and nothing is written over records. Name an empty folder: TOELINE_DATA=/path npm run restore -- FOLDER`,
  "data-folder-served": ({ folder }) =>
    `${folder} is in use by a Toeline that runs. Stop it first (Ctrl-C where it runs).`,
};

export const backupSentence = ({ code, data }: BackupIssue): string => backupSentences[code](data);

const codeOf = (error: unknown): string =>
  String((error as { code?: unknown } | null)?.code ?? (error instanceof Error ? error.message : error));

/** What a failed file operation at the target means; what is no such failure is thrown on. */
export function targetRefusal(folder: string, error: unknown): Result<never, BackupIssue> {
  const reason = codeOf(error);
  if (/^(ENOSPC|EDQUOT|EFBIG|SQLITE_FULL)$/.test(reason)) return fail(issue("target-full", [], { folder }));
  if (/^(E[A-Z]+|SQLITE_(CANTOPEN|READONLY|IOERR)\w*)$/.test(reason))
    return fail(issue("target-unusable", [], { folder, reason }));
  throw error;
}
