import { combineSimilarities } from "../../app/_core/similarity/combine.ts";
import { modelFacts } from "../embed.ts";
import { readClasses, type Sample } from "../evaluate/folders.ts";
import { shipped } from "../evaluate/method.ts";
import { areaUnderRoc, mean, median, recallAt } from "../evaluate/metrics.ts";
import { compare, type Known, rank } from "../evaluate/rank.ts";
import { decode } from "../preprocess.ts";

/**
 * How to combine the similarities of several photographs of one mark: several rules, over a folder that
 * `own_test.py --split validation --several 3` wrote.
 *
 *   npx tsx ml/train/combine.ts DIR
 */
const [folder] = process.argv.slice(2);
if (!folder) throw new Error("The folder that own_test.py wrote must be given.");

const { id, queryTurns, likeness } = await modelFacts();
const method = shipped(id, queryTurns, null, false);
const known: Known[] = [];
for (const { label, path } of await readClasses(`${folder}/references`, "DIR"))
  known.push({ label, described: await method.reference(await decode(path)) });

/** By class, for each photograph of it, its similarity to every reference's class. */
type Seen = Map<string, ReadonlyMap<string, number>[]>;

async function see(part: string): Promise<Seen> {
  const seen: Seen = new Map();
  const samples: readonly Sample[] = await readClasses(`${folder}/${part}`, "DIR");
  for (const { label, path } of samples) {
    const ranking = rank(compare(await method.query(await decode(path)), known), known);
    const similarities = new Map(ranking.map((each) => [each.label, each.similarity]));
    seen.set(label, [...(seen.get(label) ?? []), similarities]);
  }
  return seen;
}

type Rule = (similarities: readonly number[]) => number;

const oddsOf = (similarity: number): number =>
  (Math.log(3) * (similarity - likeness.noneBelow)) / (likeness.close - likeness.noneBelow);
const softened =
  (temperature: number): Rule =>
  (given) =>
    temperature * Math.log(mean(given.map((each) => Math.exp(each / temperature))));

const RULES: Readonly<Record<string, Rule>> = {
  mean,
  maximum: (given) => Math.max(...given),
  median,
  "mean log-odds, not below -4": (given) => mean(given.map((each) => Math.max(-4, oddsOf(each)))),
  "mean log-odds, not below -8": (given) => mean(given.map((each) => Math.max(-8, oddsOf(each)))),
  "softened, temperature 0.02": softened(0.02),
  "softened, temperature 0.05": softened(0.05),
  "softened, temperature 0.1": softened(0.1),
  "halfway between mean and maximum": combineSimilarities,
};

/** The rank of the right class, and the similarity of the first, when these photographs are asked together. */
function ask(label: string, photographs: readonly ReadonlyMap<string, number>[], rule: Rule) {
  const classes = known.map((each) => ({
    label: each.label,
    similarity: rule(photographs.map((seen) => seen.get(each.label) ?? Number.NaN)),
  }));
  const own = classes.find((each) => each.label === label)?.similarity ?? Number.NaN;
  const best = Math.max(...classes.map(({ similarity }) => similarity));
  return { rank: 1 + classes.filter(({ similarity }) => similarity > own).length, best };
}

const asked = (seen: Seen, count: number, rule: Rule) =>
  [...seen].map(([label, photographs]) => ask(label, photographs.slice(0, count), rule));

const recall = (answers: readonly { rank: number }[]) =>
  recallAt(
    1,
    answers.map((each) => each.rank),
  ).toFixed(3);

const parts = {
  moderate: await see("moderate"),
  absent: await see("absent"),
  hard: await see("hard"),
  "absent-hard": await see("absent-hard"),
};
const strangers = [...parts["absent-hard"].values()];
for (const [name, rule] of Object.entries(RULES)) {
  const cells: string[] = [];
  for (const [present, absent] of [
    [parts.moderate, parts.absent],
    [parts.hard, parts["absent-hard"]],
  ] as const)
    for (const count of [2, 3]) {
      const answers = asked(present, count, rule);
      const best = (each: { best: number }) => each.best;
      const area = areaUnderRoc(answers.map(best), asked(absent, count, rule).map(best));
      cells.push(`${recall(answers)} ${area.toFixed(3)}`);
    }
  const beside = [...parts.moderate].map(([label, [first = new Map()]], i) =>
    ask(label, [first, strangers[i]?.[0] ?? first], rule),
  );
  console.log(`| ${name} | ${cells.join(" | ")} | ${recall(beside)} |`);
}
