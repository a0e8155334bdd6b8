/**
 * Remembers the latest answers, the one asked for longest ago going first; asked again while it is still being made,
 * one answer serves both.
 * @param most answers that are kept
 * @param isKept whether an answer is worth keeping; a failure never is
 */
export function rememberLast<Answer>(most: number, isKept: (answer: Answer) => boolean = () => true) {
  const kept = new Map<string, Promise<Answer>>();
  return (key: string, make: () => Promise<Answer>): Promise<Answer> => {
    const answer = kept.get(key) ?? make();
    const isNew = !kept.has(key);
    // Put at the end again: the first is the one asked for longest ago.
    kept.delete(key);
    kept.set(key, answer);
    const [oldest] = kept.keys();
    if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    if (isNew) {
      const forget = () => kept.get(key) === answer && kept.delete(key);
      answer.then((made) => isKept(made) || forget(), forget);
    }
    return answer;
  };
}
