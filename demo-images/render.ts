import { parseArguments, usage } from "./arguments";
import { encodePicture } from "./encode";
import { macroNames } from "./macro/macro-scenarios";
import { renderMacro } from "./macro/render-macro";
import { renderSceneOnThreads } from "./render-scene";
import { scenarioNames } from "./scenarios";
import { existsSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { dirname } from "node:path";

const parsed = parseArguments(process.argv.slice(2));
if (!parsed.ok) {
  process.stderr.write(`${parsed.sentence}\n`);
  process.exitCode = 2;
} else if (parsed.what === "list" || parsed.what === "help") {
  process.stdout.write(parsed.what === "list" ? `${[...scenarioNames, ...macroNames].join("\n")}\n` : usage);
} else if (!existsSync(dirname(parsed.out))) {
  // Asked before the rendering, which takes a while.
  process.stderr.write(`There is no folder ${dirname(parsed.out)} to write to; make it first.\n`);
  process.exitCode = 2;
} else {
  const { params, out } = parsed;
  const rendered =
    parsed.what === "section"
      ? renderMacro(parsed.params)
      : await renderSceneOnThreads(parsed.params, availableParallelism());
  writeFileSync(
    out,
    await encodePicture(rendered, {
      quality: params.jpegQuality ?? 84,
      orientation: params.orientation ?? 1,
    }),
  );
  writeFileSync(out.replace(/\.jpe?g$/i, ".json"), `${JSON.stringify(rendered.truth)}\n`);
}
