import { reader } from "@/lib/trace";
import { toeSigma } from "@/lib/trace/trace-bead";
import { pictureKinds, type PictureKind } from "./pictures";
import { spoiltKinds, type SpoiltAnswer, type SpoiltKind } from "./spoilt";
import { offAndSolid, type StudiedPicture, type StudiedStation } from "./study-picture";

const kindWords: Readonly<Record<StudiedPicture["kind"], string>> = {
  calibration: "joints it was trained on, other pictures",
  "fit-street": "joints never trained on, street, where the intervals are set",
  "fit-plain": "joints never trained on, the demo's bench, where the intervals are set",
  "kept-street": "joints never trained on, as they lie about",
  "kept-plain": "joints never trained on, the demo's bench",
  "fresh-tune": "joints never trained on, fresh, the rules were settled on these",
  "fresh-kept": "joints never trained on, fresh, kept apart",
  "ripples-tune": "joints it was trained on, the rules for ripples were settled on these",
  "ripples-kept": "every joint, fresh, kept apart for ripples",
  photographs: "photographs of the folder",
};

const quantile = (list: readonly number[], q: number): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(q * list.length))] ?? NaN;
const mean = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;
const percent = (share: number, places = 1): string =>
  Number.isFinite(share) ? `${(100 * share).toFixed(places)} %` : "-";
export const row = (...cells: readonly (string | number)[]): string => `| ${cells.join(" | ")} |`;
export const head = (...cells: readonly string[]): string =>
  `${row(...cells)}\n${row(...cells.map(() => "---"))}`;

const widthError = ([upper, lower]: StudiedStation): number => upper + lower;
/** Two standard deviations of a station's width, as the profile states it. */
function stated([, , upperSpread, lowerSpread, upperSure, lowerSure]: StudiedStation): number {
  return (
    2 *
    Math.hypot(toeSigma(upperSpread, upperSure), toeSigma(lowerSpread, lowerSure), reader.commonWidthSigma)
  );
}

function kindRow(kind: StudiedPicture["kind"], all: readonly StudiedPicture[]): string {
  const mine = all.filter((one) => one.kind === kind);
  const read = mine.filter(({ stations }) => stations.length > 0);
  const stations = read.flatMap((one) => one.stations);
  const errors = stations.flatMap(([upper, lower]) => [Math.abs(upper), Math.abs(lower)]);
  const means = read.map((one) => mean(one.stations.map(widthError)));
  return row(
    kindWords[kind],
    `${read.length} of ${mine.length}`,
    percent(quantile(errors, 0.5), 2),
    percent(quantile(errors, 0.9)),
    percent(mean(errors.map((e) => (e > 0.25 ? 1 : 0)))),
    percent(mean(stations.map(offAndSolid))),
    percent(quantile(means, 0.5)),
    percent(mean(stations.map((one) => (Math.abs(widthError(one)) <= stated(one) ? 1 : 0)))),
    percent(mean(means.map((one) => (Math.abs(one) <= 2 * reader.commonWidthSigma ? 1 : 0)))),
    quantile(
      read.map(({ seconds }) => seconds),
      0.5,
    ).toFixed(1),
  );
}

/** As the profile has it: the whole is no guess, and nothing is rolled over a toe where somebody marked it. */
const isStated = ({ stations }: StudiedPicture): boolean =>
  quantile(
    stations.map(([, , , , upper, lower]) => Math.min(upper, lower)),
    0.5,
  ) > 0.5;

function statedRow(kind: PictureKind, all: readonly StudiedPicture[], marked: boolean): string | null {
  const mine = all.filter((one) => one.kind === kind && one.stations.length > 0);
  const read = mine.filter(isStated).map(({ stations }) => stations.filter((one) => !marked || one[6] !== 1));
  if (mine.length === 0) return null;
  const stations = read.flat();
  const means = read.map((one) => Math.abs(mean(one.map(widthError))));
  const within = (limit: number): string =>
    `${means.filter((one) => one <= limit).length} of ${means.length}`;
  return row(
    `${kindWords[kind]}${marked ? ", overlap marked" : ""}`,
    `${read.length} of ${mine.length}`,
    percent(mean(stations.map((one) => (Math.abs(widthError(one)) <= stated(one) ? 1 : 0)))),
    within(2 * reader.commonWidthSigma),
    percent(Math.max(...means)),
  );
}

const statedRows = (all: readonly StudiedPicture[]): string[] =>
  pictureKinds
    .filter((kind) => kind.startsWith("fresh"))
    .flatMap((kind) => [statedRow(kind, all, false), statedRow(kind, all, true)])
    .filter((line) => line !== null);

function sureRows(all: readonly StudiedPicture[]): string[] {
  const toes = all
    .filter(({ kind }) => kind.startsWith("kept"))
    .flatMap(({ stations }) => stations)
    .flatMap(([a, b, , , sureA, sureB]) => [[Math.abs(a), sureA] as const, [Math.abs(b), sureB] as const]);
  const steps = [0, 0.5, reader.solidFrom, 0.8, 0.9, 0.95, 0.98, 1.01];
  return steps.slice(1).map((to, i) => {
    const from = steps[i]!;
    const here = toes.filter(([, sure]) => sure >= from && sure < to);
    const off = (by: number): string => percent(mean(here.map(([error]) => (error > by ? 1 : 0))));
    return row(
      `${from} to ${Math.min(1, to)}${from >= reader.solidFrom ? ", solid" : ", dashed"}`,
      percent(here.length / toes.length),
      here.length === 0 ? "-" : off(reader.reachWidths),
      here.length === 0 ? "-" : off(0.25),
    );
  });
}

function scenarioRows(all: readonly StudiedPicture[]): string[] {
  const kept = all.filter(({ kind }) => kind.startsWith("kept"));
  return [...new Set(kept.map(({ scenario }) => scenario))].toSorted().map((scenario) => {
    const mine = kept.filter((one) => one.scenario === scenario);
    const read = mine.filter(({ stations }) => stations.length > 0);
    const means = read.map((one) => mean(one.stations.map(widthError)));
    const medians = read.map((one) =>
      quantile(
        one.stations.flatMap(([a, b]) => [Math.abs(a), Math.abs(b)]),
        0.5,
      ),
    );
    const worst = means.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
    return row(
      scenario,
      `${read.length} of ${mine.length}`,
      percent(quantile(medians, 0.5), 2),
      percent(quantile(means, 0.5)),
      percent(worst),
    );
  });
}

/** Ends within this share of the bead's length are right. */
const RIGHT = 0.1;

function proposalRow(kind: StudiedPicture["kind"], all: readonly StudiedPicture[]): string {
  const mine = all.filter((one) => one.kind === kind && one.proposal !== "not asked");
  const made = mine.flatMap(({ proposal }) =>
    typeof proposal !== "string" && proposal.made ? [proposal] : [],
  );
  const right = made.filter(({ ends }) => Math.max(...ends) <= RIGHT);
  return row(
    kindWords[kind],
    `${made.length} of ${mine.length}`,
    `${right.length} of ${made.length}`,
    percent(
      quantile(
        made.flatMap(({ ends }) => ends),
        0.5,
      ),
    ),
  );
}

const spoiltWords: Readonly<Record<SpoiltKind, string>> = {
  none: "as it was: a refusal is false",
  tiny: "bead 16 to 40 px wide",
  blurred: "blurred over a third to six tenths of the width",
  blown: "six tenths of the bead white",
  "no-bead": "no bead in the picture",
  "two-beads": "two beads, the line between them",
};

const proposedOf = (all: readonly SpoiltAnswer[]): string =>
  `${all.filter(({ proposed }) => proposed === "proposed").length} of ${all.length}`;

function spoiltRow(kind: SpoiltKind, all: readonly SpoiltAnswer[]): string {
  const mine = all.filter((one) => one.kind === kind);
  const codes = [...new Set(mine.map(({ traced }) => traced))].toSorted();
  const counted = codes.map((code) => `${code} ${mine.filter(({ traced }) => traced === code).length}`);
  const single = mine.filter(({ beads }) => beads === 1);
  const rest = kind === "none" && single.length > 0 ? `; of one bead ${proposedOf(single)}` : "";
  return row(spoiltWords[kind], mine.length, counted.join(", "), `${proposedOf(mine)}${rest}`);
}

/** What is said of pictures that were spoilt on purpose. */
export function spoiltTable(all: readonly SpoiltAnswer[]): string {
  return [
    head("picture", "pictures", "the reader along a line", "a weld line proposed"),
    ...spoiltKinds.filter((kind) => all.some((one) => one.kind === kind)).map((kind) => spoiltRow(kind, all)),
  ].join("\n");
}

const kindHead = head(
  "pictures",
  "read",
  "toe error, median",
  "90 %",
  "off by a quarter",
  "off by a quarter and drawn solid",
  "width bias, median",
  "stations within stated",
  "mean widths within stated",
  "seconds",
);

const proposalHead = head(
  "weld line without a click",
  "proposed",
  "both ends within a tenth of the length",
  "an end off, median",
);

/** The study as tables. Pictures are renders: nothing here is an accuracy on photographs. */
export function traceTables(all: readonly StudiedPicture[], today: string): string {
  return [
    `Traced renders, ${today}, reader ${reader.version} (${reader.sha256.slice(0, 12)}). Errors in shares of the bead's width; renders, not photographs.`,
    "",
    kindHead,
    ...pictureKinds.filter((kind) => all.some((one) => one.kind === kind)).map((kind) => kindRow(kind, all)),
    "",
    head("widths stated", "pictures", "stations within stated", "mean widths within stated", "farthest mean"),
    ...statedRows(all),
    "",
    head("how sure (never trained on)", "toe points", "off by more than a twelfth", "off by a quarter"),
    ...sureRows(all),
    "",
    head("never trained on", "read", "toe error, median", "width bias, median", "worst picture"),
    ...scenarioRows(all),
    "",
    proposalHead,
    ...pictureKinds
      .filter((kind) => all.some((one) => one.kind === kind))
      .map((kind) => proposalRow(kind, all)),
  ].join("\n");
}

/** The same figures of somebody's own labelled photographs, and a line for each of them. */
export function photoTables(all: readonly StudiedPicture[], today: string): string {
  return [
    `Traced photographs of a folder, ${today}, reader ${reader.version} (${reader.sha256.slice(0, 12)}). Errors in shares of the bead's width, against the labels beside the photographs: they hold for these and for photographs like them.`,
    "",
    kindHead,
    kindRow("photographs", all),
    "",
    proposalHead,
    proposalRow("photographs", all),
    "",
    head(
      "photograph",
      "bead, px wide",
      "toe error, median",
      "width bias",
      "weld line proposed, farther end off",
    ),
    ...all.map(photoRow),
  ].join("\n");
}

function photoRow({ scenario, widthPx, refused, stations, proposal }: StudiedPicture): string {
  const errors = stations.flatMap(([upper, lower]) => [Math.abs(upper), Math.abs(lower)]);
  const said =
    typeof proposal === "string"
      ? proposal
      : proposal.made
        ? percent(Math.max(...proposal.ends))
        : "line-unclear";
  return refused === null
    ? row(
        scenario,
        Math.round(widthPx),
        percent(quantile(errors, 0.5), 2),
        percent(mean(stations.map(widthError))),
        said,
      )
    : row(scenario, Math.round(widthPx), refused, "-", said);
}
