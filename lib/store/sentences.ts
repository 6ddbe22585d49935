import type { RecordIssue } from "./record-issue";

/** One clear sentence about what to do, per expected failure. */
export const recordSentences: Readonly<Record<RecordIssue["code"], (issue: RecordIssue) => string>> = {
  "bead-gone": () => "This bead is no longer in the list; it was deleted. Go back to the list.",
  "bead-changed-elsewhere": () =>
    "This bead was changed in another window meanwhile. Choose below which version to keep; nothing is lost until you do.",
  "bead-not-understood": ({ path, data }) =>
    `This change could not be saved (${path.join(" › ") || "bead"}: ${data["reason"] ?? "not understood"}). Correct it and it will be saved at once.`,
  "bead-too-many-points": ({ data }) =>
    `More is drawn on the photos of this bead than can be measured in time (${data["points"] ?? "too many"} points of at most ${data["most"] ?? "a fixed number"}). Draw outlines with fewer points, sections above all.`,
  "bead-unreadable": () =>
    "The record of this bead cannot be read any more: something outside this program changed or damaged it. Nothing of it was changed. Put the database back from a backup; all other beads work meanwhile.",
  "bead-handed-in": () =>
    "This bead was handed in for an exercise, so it stays. Withdraw the hand-in first, while no feedback was returned.",
  "bead-signed": () => "A signed record speaks of this bead, so it stays as it is.",
  "bead-there-already": () => "This bead is in the list already, so it was not made twice.",
  "bead-not-deleted": () => "This bead is not among the deleted ones. Go back to the list.",
  "bead-erased": () =>
    "This bead was deleted more than 30 days ago and is erased. It cannot be brought back.",
  "photo-already-on-bead": () => "This photo is already on this bead, so it was not added twice.",
  "photo-id-taken": () =>
    "This photo could not be told from another one. Take it off here and add it once more.",
  "photo-gone": () => "This photo is no longer on the bead. Reload the page to see what is.",
  "person-not-understood": ({ path }) =>
    path[0] === "mark"
      ? "An identification has up to 20 letters, digits, dots, dashes or slashes."
      : "A person needs a name of up to 120 letters and a role.",
  "person-gone": () => "This person is no longer in the list. Reload the page.",
  "mark-taken": ({ data }) =>
    `The identification ${data["mark"] ?? ""} is somebody else's. Records rest on it, so each person needs one of their own.`,
  "last-owner": () => "This is the last owner with an account. Make another person an owner first.",
  "roster-roles": ({ data }) =>
    `Nobody was added: only an owner gives the roles that stand beside “${data["name"] ?? ""}”. Take them out of the list, or let an owner paste it.`,
  "roster-not-understood": ({ data }) =>
    `Nobody was added: ${data["name"] ? `“${data["name"]}” is no line of a list` : "paste between one and 200 lines"}. One student a line, the name, then a tab or a semicolon and the identification; roles, if any, last, parted by +.`,
  "group-name-missing": () => "A group needs a name of up to 80 letters.",
  "group-name-taken": () => "There is a group of this name already. Choose another name.",
  "group-gone": () => "This group is no longer in the list. Go back to the groups.",
  "exercise-not-understood": ({ path }) =>
    path[0] === "title"
      ? "An exercise needs a title of up to 120 letters."
      : `This exercise could not be saved (${path.join(" › ") || "exercise"}). Correct it and save again.`,
  "exercise-gone": () => "This exercise is no longer in the list. Go back to the group.",
  "exercise-changed-elsewhere": () =>
    "This exercise was changed in another window meanwhile, so nothing was saved. Reload the page and make your change again.",
  "exercise-closed": () =>
    "This exercise takes no more beads: your instructor has closed it. Ask them to open it again.",
  "hand-in-code-unknown": () => "No exercise has this code. Check it against the notice on the bench.",
  "hand-in-code-old": () => "This code has run out. Ask your instructor for the new one.",
  "hand-in-needs-account": () =>
    "This exercise takes beads only from people who are signed in. Sign in, then open this address again.",
  "hand-in-other-group": () =>
    "This exercise is another group's, and you are not in it. Ask your instructor to put you there.",
  "hand-in-nameless": () => "Choose your name from the list or type it, so that the answer finds you.",
  "hand-in-not-understood": ({ path }) =>
    `This could not be handed in (${path.join(" › ") || "form"}). Correct it and send it again.`,
  "hand-in-photo-twice": () =>
    "This very photo was handed in for this exercise already, so it was not handed in twice. Take a new one of your bead.",
  "hand-in-bead-twice": () => "This bead was handed in already.",
  "hand-in-without-photo": () => "This bead has no photo. Add one first, then hand it in.",
  "hand-in-gone": () => "This hand-in was withdrawn. Go back to the exercise.",
  "hand-in-answered": () => "Your instructor has answered, so this hand-in stays.",
  "hand-in-linked": () => "This hand-in has its person already. Reload the page.",
  "feedback-not-understood": ({ path }) =>
    `This feedback could not be saved (${path.join(" › ") || "feedback"}). It stays on this screen; correct it and it will be saved at once.`,
  "feedback-returned": () => "This feedback was returned, so it stays as it is.",
  "feedback-changed-elsewhere": () =>
    "This feedback was changed in another window meanwhile. Choose below which version to keep; nothing is lost until you do.",
  "feedback-empty": () => "Nothing was said yet. Draw, mark a line or write a remark, then return it.",
  "feedback-own": () => "This bead is your own. Feedback on it is somebody else’s to give.",
  "feedback-not-returned": () => "There is no feedback to reply to yet.",
  "reply-not-understood": () => "A reply has between one letter and 2000.",
  "phrase-not-understood": () => "A phrase has between one letter and 300.",
  "phrase-gone": () => "This phrase was deleted meanwhile. Reload the page.",
  "eye-too-few": () => "Too few beads are drawn yet. More are on the way; try again in a minute.",
  "eye-gone": () => "This round is no longer here. Begin another one.",
  "eye-answered": () => "This bead was answered already. Reload the page to see the next one.",
  "eye-not-understood": () => "This answer could not be read, so nothing was kept. Reload the page.",
  "setup-name-missing": () => "Give the set-up a name of at least one letter, then save it.",
  "setup-gone": () => "This saved set-up was deleted meanwhile. Choose another one.",
  "filter-name-missing": () => "Give the filter a name of at least one letter, then save it.",
  "filter-gone": () => "This saved filter was deleted meanwhile. Choose another one.",
  "job-not-understood": ({ path }) =>
    path[0] === "title"
      ? "A job needs a title of up to 120 letters."
      : `This job could not be saved (${path.join(" › ") || "job"}). It stays on this screen; correct it and save again.`,
  "job-gone": () => "This job is no longer in the list. Go back to the jobs.",
  "job-changed-elsewhere": () =>
    "This job was changed in another window meanwhile. Choose below which version to keep; nothing is lost until you do.",
  "weld-gone": () => "This weld is no longer on the job. Reload the page.",
  "weld-has-beads": ({ data }) =>
    `Weld ${data["weld"] ?? "here"} has beads, so it stays. Take its beads off first, then strike it off.`,
  "criteria-not-understood": ({ path, data }) =>
    `These limits could not be saved (${path.map((step) => (typeof step === "number" ? step + 1 : step)).join(" › ") || "form"}: ${data["reason"] ?? "not understood"}). Correct it and save again.`,
  "criteria-gone": () => "There are no limits of this name. Go back to the criteria.",
  "criteria-changed-elsewhere": ({ data }) =>
    `Version ${data["version"] ?? "a newer one"} was saved in another window meanwhile. Choose below which version to keep; nothing is lost until you do.`,
  "trial-not-understood": () =>
    "This trial could not be saved. It needs a title, a knob or two with both ends, and what is wanted.",
  "trial-gone": () => "This trial is no longer in the list. Go back to the trials.",
  "trial-changed-elsewhere": () =>
    "This point of the trial was begun in another window meanwhile. Reload the page to see what is next.",
  "card-not-understood": () =>
    "This card could not be saved. It needs a title, and ranges with a low and a high end.",
  "card-gone": () => "This card is no longer in the list. Go back to the cards.",
  "instrument-due-before-done": () =>
    "A calibration cannot be due before it was done. Correct one of the two days.",
  "instrument-not-understood": ({ path }) =>
    `An instrument needs a kind and a name, and its days as year, month, day (${path.join(" › ") || "form"}).`,
  "study-not-understood": ({ path }) =>
    `This study could not be kept (${path.join(" › ") || "form"}). What you typed stays on this screen; correct it and save again.`,
  "study-gone": () => "This study is no longer here. Go back to the instrument.",
  "instrument-gone": () => "This instrument is no longer in the list. Reload the page.",
  "inspection-gone": () => "This inspection is no longer in the list. Go back to the jobs.",
  "inspection-not-understood": ({ path }) =>
    `This inspection could not be saved (${path.join(" › ") || "form"}). It stays on this screen; correct it and save again.`,
  "inspection-changed-elsewhere": () =>
    "This inspection was changed in another window meanwhile. Choose below which version to keep; nothing is lost until you do.",
  "inspection-signed": () =>
    "This inspection is signed, so it stays as it is. Choose “Correct” to make a further revision.",
  "sign-not-inspector": () =>
    "Only somebody with the role of inspector and an account of their own signs. An owner gives both under “People”.",
  "sign-not-what-was-seen": () =>
    "Something changed since this page was opened, so nothing was signed. Reload the page, read it again, then sign.",
  "sign-points-unanswered": () =>
    "Points are open, so nothing was signed. Say in words how you take them, then sign.",
  "sign-reason-missing": () =>
    "A further revision needs a reason, so nothing was signed. Write why it is corrected.",
  "sign-key-missing": () =>
    "This inspector has no signing key yet, so nothing was signed. It is made when they choose their own passphrase: under “Your account”, or with a one-time code from the owner.",
  "sign-key-closed": () =>
    "This passphrase does not open the inspector's signing key, so nothing was signed. If somebody else set the passphrase, the owner gives a one-time code, and another key begins with the one that is chosen.",
  "key-gone": () => "There is no such key from another installation. Reload the page.",
  "key-told-otherwise": () =>
    "What you typed is not the fingerprint of this key, so nothing was confirmed. Ask its holder again, over another way than the archive came by.",
  "key-whose-missing": () => "Say whose key it is, in 2 to 120 letters.",
  "certificate-file": () =>
    "This is no PKCS #12 file (.p12, .pfx) that could be read, so nothing was set up. Export certificate and key together, once more.",
  "certificate-passphrase": () =>
    "This passphrase does not open the file, so nothing was set up. It is the one that was chosen when the file was exported.",
  "certificate-key": () =>
    "The file does not hold a private key with its own certificate, so nothing was set up. Export both together.",
  "certificate-weak": () =>
    "The key is too weak or of a kind that readers of PDF do not know, so nothing was set up. RSA from 2048 bits on or a NIST curve is wanted.",
  "certificate-other-use": () =>
    "This certificate says that it is not for signatures, so nothing was set up. Ask whoever issues it for one to sign with.",
  "certificate-not-now": () =>
    "This certificate is not valid today, so nothing was set up. Look at its dates, and at the clock of this machine.",
  "certificate-name": () => "Say whom it is issued to, in 2 to 64 letters.",
  "store-full": () =>
    "The disk is full, so nothing was saved. Free some space; your changes stay on this screen and are saved at the next change.",
  "store-unusable": () =>
    "The database did not answer, so nothing was saved. Your changes stay on this screen; wait a moment and try again.",
};

export function recordSentence(issue: RecordIssue): string {
  return recordSentences[issue.code](issue);
}
