import { parseArguments, usage } from "./arguments";
import { encodePicture } from "./encode";
import { renderSceneOnThreads } from "./render-scene";
import { scenarioNames } from "./scenarios";
import { writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";

const parsed = parseArguments(process.argv.slice(2));
if (!parsed.ok) {
  process.stderr.write(`${parsed.sentence}\n`);
  process.exitCode = 2;
} else if (parsed.what === "list" || parsed.what === "help") {
  process.stdout.write(parsed.what === "list" ? `${scenarioNames.join("\n")}\n` : usage);
} else {
  const { params, out } = parsed;
  const rendered = await renderSceneOnThreads(params, availableParallelism());
  writeFileSync(
    out,
    await encodePicture(rendered, {
      quality: params.jpegQuality ?? 84,
      orientation: params.orientation ?? 1,
    }),
  );
  writeFileSync(out.replace(/\.jpe?g$/i, ".json"), `${JSON.stringify(rendered.truth)}\n`);
}
