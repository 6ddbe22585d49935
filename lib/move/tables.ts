/**
 * Every table that is moved, those first that others point to, with the column its rows are walked by. What follows from the
 * records (BeadFacts, BeadFound, BeadCard and the words) is worked out anew where they arrive.
 */
export const movedTables = {
  person: "id",
  group: "id",
  groupMember: "groupId",
  exercise: "id",
  job: "id",
  bead: "id",
  deletedBead: "id",
  photo: "id",
  handIn: "id",
  feedback: "handInId",
  savedSetup: "id",
  setting: "key",
  phrase: "id",
  shopCriteria: "id",
  instrument: "id",
  inspection: "id",
  signedRevision: "id",
  signingKey: "id",
  keyEvent: "id",
  sealedKey: "keyId",
  keySignature: "subject",
  savedFilter: "id",
  user: "id",
  session: "id",
  account: "id",
  verification: "id",
  apikey: "id",
  logEntry: "seq",
} as const;
export type MovedTable = keyof typeof movedTables;
