/**
 * How well causes and advice hold: the fifty published cases, the scenarios that were looked at and those kept back, the
 * weights with one source left out, the advice limits over two folds, and how often a first cause is right for what it
 * was said to be. `npm run -s score`; with `-- --rows` also the rows that miss, of the published cases and of the
 * scenarios looked at. Of those kept back only totals are ever printed.
 */
import { certainties } from "@/lib/diagnose/certainty";
import { reliability, saidTo, type Told } from "./reliability";
import { percent, shareCell, table } from "./score-text";
import { keptBack, opened } from "./scenarios/kept-back";
import { foldLimits, limitGrid, spreadOf } from "./scenarios/limit-folds";
import { scenarios as restated } from "./scenarios/scenarios";
import { groups, missedIn, scoreScenario, totalsOf, type Group } from "./scenarios/score-scenario";
import { publishedCases, toldAtPresent, toldOfScenarios, toldOutOfFold } from "./told";
import { aims, bestOn, leaveOneSourceOut, runGrid, type Aim, type Fitting } from "./diagnose/left-out";
import { brier, mean, score, type ScoredRow } from "./diagnose/score";
import { weightsText } from "./diagnose/weight-grid";

const scenarios = [...restated, ...opened];

const print = (...lines: readonly string[]) => process.stdout.write(`${lines.join("\n")}\n\n`);

const ranksRow = (name: string, ranks: readonly number[], error = "") => [
  name,
  shareCell(ranks.filter((rank) => rank === 1).length, ranks.length),
  shareCell(ranks.filter((rank) => rank <= 3).length, ranks.length),
  mean(ranks).toFixed(2),
  error,
];
const toolRow = (name: string, rows: readonly ScoredRow[]) =>
  ranksRow(
    name,
    rows.map(({ toolRank }) => toolRank),
    brier(rows).toFixed(3),
  );

function printPublished(rows: readonly ScoredRow[]): void {
  const unnamed = rows.filter(({ named }) => !named);
  const lookUps = (list: readonly ScoredRow[]) => list.map(({ lookUpRank }) => lookUpRank);
  print(
    "Fifty published cases. Share with its 95 % interval; Brier score of the first cause's stated probability.",
    table([
      ["", "first", "first three", "mean rank", "Brier"],
      toolRow("Toeline", rows),
      ranksRow("look-up in table order", lookUps(rows)),
      toolRow("Toeline, cause not named in context", unnamed),
      ranksRow("look-up, cause not named", lookUps(unnamed)),
      ranksRow(
        "Toeline, source's first key only",
        rows.map(({ strictRank }) => strictRank),
      ),
    ]),
  );
}

const groupNames: Readonly<Record<Group, string>> = {
  first: "first cause",
  change: "right change, or rightly none",
  number: "sensible number",
  danger: "dangerous among the first three changes",
  flags: "contradictions flagged",
  cautions: "cautions given",
  inspector: "inspector first",
};

function printScenarios(): void {
  const [seen, kept] = [scenarios, keptBack].map((list) => totalsOf(list.map((one) => scoreScenario(one))));
  print(
    "Scenarios of the trade: looked at while the tables were worked on, and kept back.",
    table([
      ["", `${scenarios.length} looked at`, `${keptBack.length} kept back`],
      ...groups.map((group) => [
        groupNames[group],
        ...[seen!, kept!].map((totals) => shareCell(totals[group].count, totals[group].of)),
      ]),
    ]),
  );
}

function printLeftOut(fitting: Fitting): void {
  const rows = (Object.keys(aims) as Aim[]).flatMap((aim) => {
    const best = bestOn(fitting, aim);
    const left = leaveOneSourceOut(fitting, aim);
    return [
      toolRow(`fitted ${aim} on all fifty`, fitting.rows[best]!),
      toolRow(`  each source judged without it (${left.sources} fits, ${left.chosen} different)`, left.rows),
      [`  weights: ${weightsText(fitting.grid[best]!)}`, "", "", "", ""],
    ];
  });
  print(
    `Leave one source out: ${fitting.grid.length} settings of the weights; links, looks and questions stay as they are.`,
    table([
      ["", "first", "first three", "mean rank", "Brier"],
      toolRow("present weights", fitting.rows[0]!),
      [`  weights: ${weightsText(fitting.grid[0]!)}`, "", "", "", ""],
      ...rows,
    ]),
  );
}

function printFolds(): void {
  const rows = foldLimits(scenarios).map((result, i) => {
    const { change } = totalsOf(result.fitted);
    const spread = spreadOf(result);
    return [
      i === 0 ? "first on second" : "second on first",
      shareCell(change.count, change.of),
      `${percent(spread.mean)} % of ${spread.of} (${percent(spread.worst)} to ${percent(spread.best)})`,
      `${result.judged.length}`,
      `${spread.mostDanger}`,
    ];
  });
  print(
    `Two folds of the scenarios looked at: ${limitGrid().length} settings of the advice limits, right changes.`,
    "Judged is the mean over all settings that do equally best on the fitted fold, with the worst and the best of them.",
    table([["", "fitted", "judged", "equally best", "most dangerous"], ...rows]),
  );
}

function printReliability(present: readonly Told[], outOfFold: readonly Told[], kept: readonly Told[]): void {
  const lists = [present, outOfFold, kept].map((told) => reliability(told));
  const heads = ["present weights", "out of fold", "kept back, present weights"];
  print(
    `How often the first cause is right: fifty cases and ${present.length - publishedCases.length} scenarios looked at; beside them ${kept.length} kept back.`,
    table([
      ["stated probability", ...heads],
      ...lists[0]!.map(({ from, to }, i) => [
        `${from.toFixed(2)} to ${to.toFixed(2)}`,
        ...lists.map((list) => shareCell(list[i]!.right, list[i]!.of)),
      ]),
    ]),
    table([
      ["word (least share)", ...heads],
      ...certainties.map(({ word, rightAtLeast }) => [
        `${word} (${percent(rightAtLeast)} %)`,
        ...[present, outOfFold, kept].map((told) => {
          const mine = saidTo(told, word);
          return shareCell(mine.filter(({ right }) => right).length, mine.length);
        }),
      ]),
    ]),
  );
}

function printRows(rows: readonly ScoredRow[]): void {
  const published = rows
    .filter(({ toolRank }) => toolRank > 1)
    .map(({ id, toolRank, wanted, top }) => [
      id,
      `rank ${toolRank}`,
      `wanted ${wanted.join("|")}`,
      top.join(", "),
    ]);
  const looked = scenarios
    .map((one) => scoreScenario(one))
    .filter((judged) => missedIn(judged).length > 0)
    .map((judged) => [judged.id, missedIn(judged).join(", "), judged.answer]);
  print("Published cases that miss", table(published));
  print("Scenarios looked at that miss", table(looked));
}

const { rows } = score(publishedCases);
printPublished(rows);
printScenarios();
if (process.argv.includes("--rows")) printRows(rows);
const fitting = runGrid(publishedCases);
printLeftOut(fitting);
printFolds();
printReliability(toldAtPresent(scenarios), toldOutOfFold(fitting, scenarios), toldOfScenarios(keptBack));
