import { createServer } from "node:net";
import { Refused } from "./run.mjs";

const first = 3000;
const tries = 100;

/**
 * The port to serve on: the one asked for, or else 3000 or the next free one.
 * @param {string | undefined} asked the PORT of the environment
 * @returns {Promise<number>}
 */
export async function choosePort(asked) {
  if (asked) {
    const port = Number(asked);
    if (!Number.isInteger(port) || port < 1 || port > 65_535) {
      throw new Refused(`PORT must be a whole number from 1 to 65535. Received ${asked}.`);
    }
    if (!(await isFree(port))) throw new Refused(`PORT must be free. Another program answers on ${asked}.`);
    return port;
  }
  for (let port = first; port < first + tries; port++) if (await isFree(port)) return port;
  throw new Refused(`No port from ${first} to ${first + tries - 1} is free. Name another with PORT.`);
}

function isFree(port) {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", () => resolve(false));
    server.listen(port, "127.0.0.1", () => server.close(() => resolve(true)));
  });
}
