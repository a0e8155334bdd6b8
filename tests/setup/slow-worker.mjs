// What a pool's threads load in a test: work that blocks its thread for as long as it is told to, or fails.
export const alignPair = ({ milliseconds, failure }) => {
  if (failure) throw new Error(failure);
  const until = Date.now() + milliseconds;
  while (Date.now() < until);
  return milliseconds;
};
