import { availableParallelism } from "node:os";
import { fullStudy, smallStudy } from "./rendered/sizes";
import { renderedStudy } from "./rendered/study";
import { studyTables } from "./rendered/tables";

/**
 * The coverage study on rendered photographs as tables: `npm run -s study`, with the photos per scale object after
 * `--` (60 when left out), or `small` for the size of the test run.
 */
const [word = "60", ...more] = process.argv.slice(2);
const photos = Number(word);
if (more.length > 0 || (word !== "small" && (!Number.isInteger(photos) || photos < 2))) {
  console.error("photos per scale object: a whole number from 2 up, or the word small");
  process.exitCode = 2;
} else {
  const size = word === "small" ? smallStudy : fullStudy(photos);
  const result = await renderedStudy(size, word === "small" ? 1 : availableParallelism());
  console.log(studyTables(result, new Date().toISOString().slice(0, 10)));
}
