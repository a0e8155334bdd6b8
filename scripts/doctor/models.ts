import type { DescribedModel } from "#usecases/describe-models";

/**
 * Which model answers, which is being filled and how far, in words.
 * @throws Error when the one that answers can't, since its files are gone
 */
export function describeModelsInWords(models: readonly DescribedModel[]): string {
  const answering = models.find((m) => m.state === "answering");
  if (!answering) return "none has answered yet: npm start makes the first one answer";
  const words = models
    .map(({ model, state, done, of }) => `${model} ${state}, ${share(done, of)}`)
    .join("; ");
  if (!answering.isHere)
    throw new Error(
      `${words}. The files of ${answering.model} are gone or damaged: look-ups are refused until another model is filled (npm run reembed)`,
    );
  return words;
}

const share = (done: number, of: number) =>
  `${done} of ${of} photographs (${of === 0 ? 100 : Math.floor((100 * done) / of)}%)`;
