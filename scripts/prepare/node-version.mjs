/** The oldest Node that the packages run on. */
const oldest = [20, 19];

/** Says in one line that Node is too old, when it is. */
export function nodeIsTooOld() {
  const parts = process.versions.node.split(".").map(Number);
  if (parts[0] > oldest[0] || (parts[0] === oldest[0] && parts[1] >= oldest[1])) return false;
  console.error(
    `Countermark needs Node ${oldest.join(".")} or newer. This is Node ${process.versions.node}.`,
  );
  return true;
}
