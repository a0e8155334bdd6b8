const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Hours of the day, UTC. */
const [DAWN, WAKING, RESTING] = [6.5, 7, 21];

/** The time, or the evening before when it falls in the night. */
export function evening(time: number): Date {
  const hour = (time % DAY) / HOUR;
  if (hour >= WAKING && hour < RESTING) return new Date(time);
  const midnight = time - (time % DAY) - (hour < WAKING ? DAY : 0);
  return new Date(midnight + (RESTING - 1 + minutesOf(time)) * HOUR);
}

/** The time, or the next dawn when it falls in the night; what comes later stays later. */
export function morning(time: number): Date {
  const hour = (time % DAY) / HOUR;
  if (hour >= WAKING && hour < RESTING) return new Date(time);
  const slept = hour < WAKING ? hour + 24 - RESTING : hour - RESTING;
  const midnight = time - (time % DAY) + (hour < WAKING ? 0 : DAY);
  const drowsy = ((WAKING - DAWN) * slept) / (24 - RESTING + WAKING);
  return new Date(Math.floor(midnight + (DAWN + drowsy) * HOUR));
}

const minutesOf = (time: number): number => (time % HOUR) / HOUR;
