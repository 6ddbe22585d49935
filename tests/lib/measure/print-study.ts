import { availableParallelism } from "node:os";
import { fullStudy, smallStudy } from "./rendered/sizes";
import { renderedStudy } from "./rendered/study";
import { printSpotStudy } from "../trace/rendered/print-spot-study";
import { printTraceStudy } from "../trace/rendered/print-trace-study";
import { studyTables } from "./rendered/tables";
import {
  fullSectionStudy,
  keptBackSectionStudy,
  sectionStudy,
  smallSectionStudy,
  type SectionStudySize,
} from "../section/rendered/study";
import { sectionTables } from "../section/rendered/tables";

/**
 * The coverage studies as tables, on rendered photographs of beads and of etched sections: `npm run -s study`, with the
 * photos per scale object after `--` (60 when left out), `small` for the size of the test run, or `sections` for those
 * alone; `trace`, with the pictures of each kind or a file of `make-study` after it, for the reader of beads; `spots`
 * likewise for holes and spatter.
 */
const [word = "60", ...more] = process.argv.slice(2);
if (word === "trace") {
  await printTraceStudy(more);
  process.exit();
}
if (word === "spots") {
  await printSpotStudy(more);
  process.exit();
}
const photos = Number(word);
const today = new Date().toISOString().slice(0, 10);
const sections = (size: SectionStudySize): string => sectionTables(sectionStudy(size), today);
if (more.length > 0 || (!["small", "sections"].includes(word) && (!Number.isInteger(photos) || photos < 2))) {
  console.error("photos per scale object: a whole number from 2 up, or the word small or sections");
  process.exitCode = 2;
} else {
  if (word !== "sections") {
    const size = word === "small" ? smallStudy : fullStudy(photos);
    const result = await renderedStudy(size, word === "small" ? 1 : availableParallelism());
    console.log(`${studyTables(result, today)}\n`);
  }
  if (word === "small") console.log(sections(smallSectionStudy));
  else {
    console.log(`Sections looked at while the figures were worked out\n\n${sections(fullSectionStudy)}\n`);
    console.log(`Sections kept back, looked at by nobody before\n\n${sections(keptBackSectionStudy)}`);
  }
}
