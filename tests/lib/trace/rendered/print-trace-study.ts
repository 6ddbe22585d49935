import { existsSync, readFileSync } from "node:fs";
import { nodeFinder, nodeReader } from "../node-reader";
import { besideKinds, besideLines, type BesideLine } from "./beside-study";
import { besideTable } from "./beside-table";
import { studyFolder } from "./photo-folder";
import { pictureKinds } from "./pictures";
import { rippleLines, type RippleLine } from "./ripple-study";
import { rippleTable } from "./ripple-tables";
import { spoiltAnswer, spoiltKinds, type SpoiltAnswer } from "./spoilt";
import { studyPicture, type StudiedPicture } from "./study-picture";
import { proposalTime, traceTimes, type TraceTime } from "./trace-time";
import { photoTables, spoiltTable, traceTables } from "./tables";

type Line = StudiedPicture | SpoiltAnswer;

const isPicture = (line: Line): line is StudiedPicture => "stations" in line;

/**
 * With `--photos FOLDER` labelled photographs are traced (`photo-folder.ts`); with `ripples` and how many pictures the
 * spacing of ripples is read; with `beside` and how many, what looking beside a trace makes of it; with `time` one trace is timed. Otherwise renders, traces and prints; or prints what `make-study` wrote elsewhere, one picture a line. The second word begins the
 * kinds that are asked for, such as "fresh"; without it all are, and spoilt pictures too.
 */
export async function printTraceStudy([word = "12", only = ""]: readonly string[]): Promise<void> {
  const today = new Date().toISOString().slice(0, 10);
  if (word === "--photos") {
    console.log(photoTables(await studyFolder(only, await nodeReader(), await nodeFinder()), today));
    return;
  }
  if (word === "time") {
    const said = ({ clock, processor }: TraceTime): string =>
      `${clock.toFixed(2)} s by the clock, ${processor.toFixed(2)} s of processor time`;
    const { alone, whole } = await traceTimes();
    console.log(
      `In WebAssembly on one thread: one bead traced ${said(whole)} (goal: under 1 s), of that along the bead alone ${said(alone)}; a weld line proposed ${said(await proposalTime())}.`,
    );
    return;
  }
  if (word === "ripples") {
    console.log(rippleTable(await makeRipples(only === "" ? 28 : Number(only)), today));
    return;
  }
  if (word === "beside") {
    console.log(besideTable(await makeBeside(only === "" ? 24 : Number(only))));
    return;
  }
  const isFile = existsSync(word);
  if (!isFile && !/^[1-9]\d*$/.test(word)) {
    console.error(
      "study -- trace: pictures of each kind (a whole number, 12 if left out) and which kinds; a file of make-study; ripples or beside with how many; time; or --photos FOLDER",
    );
    process.exitCode = 2;
    return;
  }
  const lines = isFile ? readStudy(word) : await makeStudy(Number(word), only);
  const spoilt = lines.filter((line): line is SpoiltAnswer => !isPicture(line));
  console.log(`${traceTables(lines.filter(isPicture), today)}\n\n${spoiltTable(spoilt)}`);
}

const readStudy = (file: string): readonly Line[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Line);

const FIRST_BESIDE = 6000;

async function makeBeside(pictures: number): Promise<readonly BesideLine[]> {
  const read = await nodeReader();
  const lines: BesideLine[] = [];
  for (let n = FIRST_BESIDE; n < FIRST_BESIDE + pictures; n++)
    for (const kind of besideKinds) lines.push(...(await besideLines(kind, n, read)));
  return lines;
}

async function makeRipples(pictures: number): Promise<readonly RippleLine[]> {
  const read = await nodeReader();
  const lines: RippleLine[] = [];
  for (let n = 0; n < pictures; n++) lines.push(...(await rippleLines("ripples-kept", n, read)));
  return lines;
}

async function makeStudy(pictures: number, only: string): Promise<readonly Line[]> {
  const [read, readWhole] = [await nodeReader(), await nodeFinder()];
  const lines: (Line | null)[] = [];
  for (let n = 0; n < pictures; n++) {
    for (const kind of pictureKinds.filter((one) => one.startsWith(only)))
      lines.push(await studyPicture(kind, n, read, readWhole));
    if (only !== "") continue;
    for (const kind of spoiltKinds) lines.push(await spoiltAnswer(kind, n, readWhole, read));
  }
  return lines.filter((line) => line !== null);
}
