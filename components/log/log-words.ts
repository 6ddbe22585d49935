/** The log's codes as words for the screen. The codes themselves stay what is sealed. */

const kindWords: Readonly<Record<string, string>> = {
  account: "Account",
  bead: "Bead",
  "deleted-bead": "Deleted bead",
  setup: "Kept set-up",
  setting: "Setting",
  person: "Person",
  group: "Group",
  exercise: "Exercise",
  "hand-in": "Hand-in",
  feedback: "Feedback",
  phrase: "Quick remark",
  eye: "Training of the eye",
  criteria: "Shop's own limits",
  instrument: "Instrument",
  study: "Gauge study",
  job: "Job",
  inspection: "Inspection",
  record: "Inspection",
  signed: "Signed record",
  trial: "Trial",
  card: "Procedure card",
  key: "Key",
  certificate: "Certificate",
  log: "Log",
  checkpoint: "Signature over entry",
  passphrase: "Passphrase",
  filter: "Saved filter",
  demo: "Demo shop",
  photo: "Photo",
};

/** Kinds that have a page of their own. */
const pages: Readonly<Record<string, (id: string) => string>> = {
  bead: (id) => `/beads/${id}`,
  exercise: (id) => `/exercises/${id}`,
  group: (id) => `/groups/${id}`,
  job: (id) => `/jobs/${id}`,
  inspection: (id) => `/inspections/${id}`,
  trial: (id) => `/trials/${id}`,
  card: (id) => `/cards/${id}`,
  criteria: (id) => `/criteria/${id.replace("@", "?version=")}`,
};

/** "bead.name-removed" -> "Bead: name removed" */
export function actionText(action: string): string {
  const [kind = "", done = ""] = action.split(".");
  return `${kindWords[kind] ?? kind}: ${done.replaceAll("-", " ")}`;
}

export interface LogSubject {
  readonly kind: string;
  readonly id: string;
  /** null: nothing to open */
  readonly href: string | null;
}

/** "bead:4f6" -> its kind in words, its id and its page. */
export function logSubject(subject: string): LogSubject {
  const [kind = "", ...rest] = subject.split(":");
  const id = rest.join(":");
  return { kind: kindWords[kind] ?? kind, id, href: pages[kind]?.(id) ?? null };
}

/** The entry's detail as short phrases: `{"revision":2}` -> "revision 2". Digests keep twelve digits. */
export function detailPhrases(detail: string): readonly string[] {
  const parsed: unknown = JSON.parse(detail);
  if (typeof parsed !== "object" || parsed === null) return [];
  return Object.entries(parsed).map(
    ([key, value]) => `${keyWords[key] ?? spaced(key)} ${valueText(key, value)}`,
  );
}

const keyWords: Readonly<Record<string, string>> = {
  changed: "changed:",
  number: "number",
  sha256: "SHA-256",
  views: "pictures made from it, sealed:",
  digest: "SHA-256",
  basedOn: "after revision",
};

const partWords: Readonly<Record<string, string>> = {
  title: "title",
  welder: "run by",
  setup: "how it was run",
};

function valueText(key: string, value: unknown): string {
  if (key === "views" && Array.isArray(value)) return String(value.length);
  if (Array.isArray(value)) return value.map((part) => partText(String(part))).join(", ") || "nothing";
  const text = String(value);
  return key === "sha256" || key === "digest" ? `${text.slice(0, 12)}…` : text;
}

/** "judgement.lookedFor" -> "looked for"; "photo:ID" -> "marks or scale of photo ID" */
function partText(part: string): string {
  if (part.startsWith("photo:")) return `marks or scale of photo ${part.slice("photo:".length)}`;
  if (part.startsWith("judgement.")) return spaced(part.slice("judgement.".length));
  return partWords[part] ?? part;
}

const spaced = (key: string): string =>
  key.replace(/([a-z])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`);
