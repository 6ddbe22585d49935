/** One small change to a source: `from` stands in the file exactly once. */
export interface Change {
  readonly file: string;
  readonly from: string;
  readonly to: string;
}

/**
 * A defect that there once was, as the change that brings it back, and the test that must fail then. Defects of several
 * parts have a row for each.
 */
export interface Defect {
  readonly id: string;
  readonly change: Change;
  /** File, and a part of the name of the test (or of what it is described under). */
  readonly test: { readonly file: string; readonly name: string };
}

type Row = readonly [id: string, file: string, from: string, to: string, test: string, name: string];

const one = ([id, file, from, to, test, name]: Row): Defect => ({
  id,
  change: { file, from, to },
  test: { file: test, name },
});

const rows: readonly Row[] = [
  [
    "measuring grows with more than the square of the points",
    "lib/geometry/one-moved.ts",
    "      let square = ofOthers(index) ** 2;\n",
    `      let square = ofOthers(index) ** 2;
      for (const a of points.slice(0, points.length / 10)) for (const b of points) square = Math.max(square, 0 * Math.hypot(a.x - b.x, a.y - b.y));\n`,
    "tests/lib/measure/cost.test.ts",
    "measuring an outline of 500 points",
  ],
  [
    "a record forged by import looks signed here",
    "lib/signature/standing.ts",
    'verdict.why === "none" && claimed.keyId === null && frozenBeforeKeys',
    'sound === "sound"',
    "tests/app/forged-records.test.tsx",
    "a forged record never looks signed by somebody here",
  ],
  [
    "a throttle keeps names of any length",
    "lib/account/throttle.ts",
    'createHash("sha256").update(`${kind}\\0${who}`).digest("base64url");',
    "`${kind}\\0${who}`;",
    "tests/lib/account/throttle.test.ts",
    "grows neither with the tries of one nor with the length of a name",
  ],
  [
    "a throttle is swept only when it is full",
    "lib/account/throttle.ts",
    "  await db.tries.deleteMany({ where: { until: { lte: new Date(now) } } });\n",
    "",
    "tests/lib/account/throttle.test.ts",
    "is swept by time, whoever comes next and to which",
  ],
  [
    "a JSON door reads a body of any size",
    "lib/base/json-limit.ts",
    "MOST_JSON_MB = 4;",
    "MOST_JSON_MB = 400;",
    "tests/app/door-limits.test.ts",
    "reads no more than it says",
  ],
  [
    "a bead takes any number of points",
    "lib/marks/count-points.ts",
    "MOST_POINTS = 20_000;",
    "MOST_POINTS = 20_000_000;",
    "tests/app/door-limits.test.ts",
    "answers more points than can be measured in time",
  ],
  [
    "a changed record passes with one fitting entry",
    "lib/verify/signatures.ts",
    "const twice = frozen.length > 1 || ",
    "const twice = frozen.length < 0 && ",
    "tests/lib/verify/changed-and-sealed-again.test.ts",
    "a forger who changes a frozen text",
  ],
  [
    "a log without its end passes",
    "lib/verify/signatures.ts",
    "there.get(seq) === hash",
    "there.get(seq) === hash || seq > last",
    "tests/lib/verify/changed-and-sealed-again.test.ts",
    "is found who cuts the log off before its last signature",
  ],
  [
    "an archive brings a number that leaves no room",
    "lib/exchange/bead-file.ts",
    "z.int().positive().max(1_000_000_000)",
    "z.int().positive()",
    "tests/lib/archive/hostile-fields.test.ts",
    "is refused or leaves room to count on",
  ],
  [
    "an archive brings any id",
    "lib/exchange/bead-file.ts",
    "/^[A-Za-z0-9][A-Za-z0-9_-]{0,59}$/",
    "/[^]/",
    "tests/lib/archive/hostile-fields.test.ts",
    "is refused",
  ],
  [
    "one bead at the end of the numbers stops all others",
    "lib/beads/beads.ts",
    "where: { number: { lt: HIGHEST_COUNTED } },",
    "where: {},",
    "tests/lib/archive/hostile-fields.test.ts",
    "a bead whose number left no room",
  ],
  [
    "one sender's photos fill all turns",
    "lib/base/fair-turns.ts",
    "if (busy.has(sender)) continue;",
    "",
    "tests/lib/photo/in-turn.test.ts",
    "are never more than two, never two of one sender",
  ],
  [
    "a picture may cost any time to read",
    "lib/photo/inspect.ts",
    "MAX_INTERLACED_BYTES = 16_000_000;",
    "MAX_INTERLACED_BYTES = 16_000_000_000;",
    "tests/lib/photo/costly.test.ts",
    "an interlaced picture is taken where it is small",
  ],
  [
    "a record does not say who gave the passphrase",
    "lib/roster/passphrases.ts",
    "givenBy !== null ? `code:${givenBy}` : key?.begins",
    "key?.begins",
    "tests/lib/roster/passphrases.test.ts",
    "an inspector's passphrase",
  ],
  [
    "a code for a passphrase works more than once",
    "lib/roster/passphrases.ts",
    'used = code === null || (await takeCode(tx, { userId, givenBy: givenBy ?? "" }, code));',
    "used = true;",
    "tests/lib/roster/passphrases.test.ts",
    "is chosen with a one-time code that works once",
  ],
  [
    "a foreign page may frame ours",
    "app/_door/page-policy.ts",
    "\"frame-ancestors 'none'\",",
    "",
    "tests/app/page-policy.test.ts",
    "is our own, with this answer's nonce",
  ],
  [
    "a page of another site may post",
    "app/_door/page-policy.ts",
    "return origin !== null && URL.canParse(origin) && new URL(origin).host === host;",
    "return true;",
    "tests/app/page-policy.test.ts",
    "comes from one of ours",
  ],
  [
    "an address is given away to other sites",
    "next.config.ts",
    'value: "same-origin" },\n  { key: "X-Frame-Options"',
    'value: "unsafe-url" },\n  { key: "X-Frame-Options"',
    "tests/app/page-policy.test.ts",
    "is said on what is no page too",
  ],
  [
    "one unreadable row takes the list down",
    "lib/beads/read-bead.ts",
    "    if (!isSpoilt(error)) throw error;\n    return",
    "    throw error;\n    return",
    "tests/lib/beads/unreadable.test.ts",
    "rows that nobody can read",
  ],
  [
    "a welder saves over the shop's set-up",
    "lib/shop/setups.ts",
    "where: { name: parsed.data, ownerId }",
    "where: { name: parsed.data }",
    "tests/lib/shop/setups.test.ts",
    "stands beside the shop's and never replaces it",
  ],
  [
    "hand-in codes are tried without end",
    "app/hand-in/code-tries.ts",
    "if (seconds > 0) return { seconds };",
    "",
    "tests/app/hand-in-codes.test.ts",
    "that lead nowhere are tried some thirty times",
  ],
  [
    "a hand-in comes under the name of a student with an account",
    "lib/classroom/hand-ins.ts",
    "person: { removedAt: null, userId: null } }",
    "person: { removedAt: null } }",
    "tests/lib/classroom/codes.test.ts",
    "never hands in under the name of a student who has an account",
  ],
  [
    "a hand-in comes into a group one is not in",
    "lib/classroom/hand-ins.ts",
    'if (signedInAs !== null && person.groups.length === 0) return fail(issue("hand-in-other-group"));',
    "",
    "tests/lib/classroom/course.test.ts",
    "is not under the name of somebody with an account, nor into a group",
  ],
  [
    "a passphrase that is guessed first is taken",
    "lib/account/passphrase.ts",
    "const LEAST_SCORE = 3;",
    "const LEAST_SCORE = 0;",
    "tests/lib/account/passphrase.test.ts",
    "a passphrase",
  ],
  [
    "one address sprays names",
    "lib/account/sign-in.ts",
    "    [byAddress, address],\n",
    "",
    "tests/lib/account/sign-in.test.ts",
    "stops one address that sprays many names",
  ],
  [
    "a stranger keeps the owner out",
    "lib/account/sign-in.ts",
    "if (browser !== null) return [[byBrowser, browser]];",
    "",
    "tests/lib/account/sign-in.test.ts",
    "lets nobody else's tries keep the owner out",
  ],
  [
    "a session slides for ever",
    "lib/account/sessions.ts",
    "if (now - createdAt.getTime() < LONGEST_MS) return",
    "if (now >= 0) return",
    "tests/lib/account/sessions.test.ts",
    "end after a week, however busy they were",
  ],
  [
    "refusals are not noted",
    "lib/account/sign-in.ts",
    '  noteRefusal("sign-in-refused", address);\n',
    "",
    "tests/lib/account/sign-in.test.ts",
    "notes each refusal for whoever runs the server",
  ],
  [
    "too often is said as not signed in",
    "app/_door/route-for.ts",
    "return seconds === null ? refusal(401)",
    "return seconds !== undefined ? refusal(401)",
    "tests/app/route-for.test.ts",
    "refuses nobody, whoever may not",
  ],
  [
    "a second factor is not asked for",
    "lib/account/sign-in.ts",
    'if (number.trim() === "") return "second-factor-wanted";',
    'if (number.trim() === "") return null;',
    "tests/lib/account/second-factor.test.ts",
    "is asked for once it was confirmed",
  ],
  [
    "originals that a crash left stay for ever",
    "lib/mend/mend-data.ts",
    'if (code === "stray-original") await setAside(folder, sha256, now);',
    "",
    "tests/lib/mend/check-data.test.ts",
    "is rid of what a crash left",
  ],
  [
    "the photo of an erased bead stays",
    "lib/beads/deleted-beads.ts",
    "      await letGoPhoto(pen.db, dataDir, sha256);\n",
    "      void [letGoPhoto, dataDir, sha256];\n",
    "tests/lib/beads/deleted-beads.test.ts",
    "keeps its photos as long as it can come back",
  ],
  [
    "the words of an erased bead stay in the file",
    "lib/beads/deleted-beads.ts",
    "    await forgetFreed(pen.db);\n",
    "",
    "tests/lib/beads/deleted-beads.test.ts",
    "leaves no byte of its words in the folder",
  ],
  [
    "the words of a removed person stay in the file",
    "lib/roster/people.ts",
    "    await forgetFreed(pen.db);\n",
    "",
    "tests/lib/verify/verify.test.ts",
    "leaves no name anywhere in the database",
  ],
  [
    "a short name is not looked for",
    "lib/roster/name-places.ts",
    'const wanted = [words.join("[^\\\\p{L}\\\\p{N}]+"), ',
    "const wanted = [",
    "tests/lib/roster/name-places.test.ts",
    "a name in free texts",
  ],
  [
    "everybody on the machine reads the folder",
    "lib/cli/close-to-others.mjs",
    "chmodSync(one, 0o700)",
    "chmodSync(one, 0o755)",
    "tests/lib/cli/data-folder.test.ts",
    "is closed to others",
  ],
  [
    "two starts run on one folder",
    "lib/cli/data-lock.mjs",
    "BEGIN EXCLUSIVE",
    "BEGIN",
    "tests/lib/cli/data-folder.test.ts",
    "is set up and served by one process at a time",
  ],
  [
    "a killed filling stays half",
    "lib/demo/fill-whole.ts",
    "  if (!existsSync(asideOf(folder))) return;\n",
    "  if (asideOf(folder)) return;\n",
    "tests/lib/demo/fill-whole.test.ts",
    "the demo shop",
  ],
  [
    "an empty database beside photos is filled with the demo",
    "lib/cli/demo.ts",
    "  if (originals > 0)\n",
    "  if (originals > 1e9)\n",
    "tests/lib/demo/fill-whole.test.ts",
    "is not filled in beside a full photo folder",
  ],
  [
    "a missing picture breaks the paper",
    "app/_door/print-pictures.ts",
    "      .catch(() => null);\n    if (bytes) found.set(sha256, bytes);",
    '      .then((read) => read ?? Promise.reject(new Error("missing")));\n    found.set(sha256, bytes);',
    "tests/app/print-pictures.test.ts",
    "a picture that is gone",
  ],
  [
    "a clock put back makes the log fail for ever",
    "lib/store/log.ts",
    "if (last === null || at >= last.at) return { at, clock: {} };",
    "if (last === null || at) return { at, clock: {} };",
    "tests/faults/broken-folder.test.ts",
    "a clock that is put back leaves a log that verifies",
  ],
  [
    "a photo is not on the disk before its row",
    "lib/photo/folder-store.ts",
    "  await syncFolder(originals);\n",
    "",
    "tests/lib/photo/synced.test.ts",
    "are on the disk before anybody is told",
  ],
  [
    "no free file handle is a fault without words",
    "lib/photo/disk.ts",
    '  "EMFILE",\n',
    "",
    "tests/faults/broken-folder.test.ts",
    "of open files refuses in words",
  ],
  [
    "a file that may not grow is a fault without words",
    "lib/store/guard-store.ts",
    "SQLITE_IOERR|SQLITE_CANTOPEN|disk I\\/O error|",
    "SQLITE_CANTOPEN|",
    "tests/faults/broken-folder.test.ts",
    "of file size refuses in words",
  ],
  [
    "a code that is no text is a fault",
    "app/hand-in/code-tries.ts",
    '  } catch {\n    return "";\n  }',
    "  } finally {\n  }",
    "tests/app/hand-in-codes.test.ts",
    "that are no text in an address are no code",
  ],
  [
    "a huge number in an address is a fault",
    "app/log/entry-number.ts",
    "return asked > 0 && asked <= MOST ? asked : null;",
    "return asked > 0 ? asked : null;",
    "tests/faults/broken-folder.test.ts",
    "the number of an entry in an address",
  ],
];

export const defects: readonly Defect[] = rows.map(one);

/** The text with the change made to it. Throws where it does not apply exactly once: then the table is out of date. */
export function withChange(text: string, id: string, { file, from, to }: Change): string {
  const found = text.split(from).length - 1;
  if (found !== 1) throw new Error(`${id}: the change to ${file} applies ${found} times instead of once`);
  return text.replace(from, () => to);
}
