import { isAway, type Saved } from "@/components/saving";
import { emptyBeadContent, type BeadContent, type PhotoFacts } from "@/lib/assess";
import { inWords, type Answer, type Refusal } from "@/lib/base";
import { photosToSend, type KeptPhoto } from "./kept";

/** A bead as the store has just made it. */
export interface MadeBead {
  readonly number: number;
  readonly title: string;
}

/** A photo as the store took it in. */
export interface TakenPhoto {
  readonly photo: PhotoFacts;
  /** What the person should know of it. */
  readonly said: readonly string[];
}

/** Where things go. None of these rejects where nobody answers: that is a refusal with a code of `isAway`. */
export interface Doors {
  /** Makes the bead, or finds it made already. */
  readonly make: (beadId: string) => Promise<Answer<MadeBead>>;
  readonly sendPhoto: (photo: KeptPhoto) => Promise<Answer<TakenPhoto>>;
  readonly save: (beadId: string, basedOn: number, content: BeadContent) => Promise<Answer<Saved>>;
}

/** Told of each step as soon as it is done: what was done once is not to be done again after a broken line. */
export interface Told {
  readonly made: (bead: MadeBead) => Promise<void> | void;
  readonly taken: (kept: KeptPhoto, photo: TakenPhoto) => Promise<void> | void;
  readonly refused: (kept: KeptPhoto, why: string) => Promise<void> | void;
}

export interface ToSend {
  readonly beadId: string;
  readonly isNew: boolean;
  /** As in `KeptBead`. */
  readonly madeAs: string | null;
  readonly basedOn: number;
  readonly content: BeadContent;
  /** Those that wait now; asked when their turn comes. */
  readonly photos: () => readonly KeptPhoto[];
}

/** With the title that the record was made with, unless somebody wrote one: what is sent twice must be the same twice. */
function titled(content: BeadContent, title: string | null): BeadContent {
  return title !== null && content.title === emptyBeadContent.title ? { ...content, title } : content;
}

/**
 * Sends what one bead holds, in the only order in which the store can take it: the bead, its photos as they were taken,
 * then everything said about them. The first that gets no answer ends the round; it all goes on from there. A photo that
 * is refused is told and left aside, so that it does not hold up the rest.
 */
export async function sendKept(job: ToSend, doors: Doors, told: Told): Promise<Answer<Saved>> {
  const made = job.isNew ? await doors.make(job.beadId) : null;
  if (made && !made.ok) return made;
  if (made) await told.made(made.value);
  const stopped = await sendPhotos(job, doors, told);
  if (stopped) return stopped;
  const content = titled(job.content, made?.value.title ?? job.madeAs);
  // A bead begun here grew from nothing; the first revision of its record is 1.
  return doors.save(job.beadId, Math.max(1, job.basedOn), content);
}

async function sendPhotos({ photos }: ToSend, doors: Doors, told: Told) {
  const tried = new Set<string>();
  const next = () => photosToSend(photos()).find(({ id }) => !tried.has(id));
  for (let photo = next(); photo; photo = next()) {
    tried.add(photo.id);
    const answer = await doors.sendPhoto(photo);
    if (answer.ok) await told.taken(photo, answer.value);
    else if (isAway(answer) || answer.issues.some(({ code }) => aboutTheBead.has(code))) return answer;
    else await told.refused(photo, inWords(answer));
  }
  return null;
}

/** What the server says to somebody who is not signed in (any more). */
export const SIGNED_OUT = "sign-in-first";

/** Nothing is wrong with what was sent: it is taken once its person has signed in again. */
export const isSignedOut = ({ issues }: Refusal): boolean => issues.some(({ code }) => code === SIGNED_OUT);

/** Refusals that say nothing of the photo itself. */
const aboutTheBead: ReadonlySet<string> = new Set(["bead-gone", SIGNED_OUT, "not-yours"]);
