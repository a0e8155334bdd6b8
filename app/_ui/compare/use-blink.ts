import { useEffect, useState } from "react";

/** Well under three changes a second. Source: WCAG 2.2, success criterion 2.3.1. */
const EVERY_MS = 800;

export type Blink = {
  /** The second picture is the one to be seen. */
  readonly second: boolean;
  readonly going: boolean;
  readonly setGoing: (going: boolean) => void;
  readonly swap: () => void;
};

/** Shows one picture after the other while it goes; starts by itself only where motion is welcome. */
export function useBlink(on: boolean): Blink {
  const [second, setSecond] = useState(false);
  const [going, setGoing] = useState(false);
  useEffect(() => {
    setGoing(on && !window.matchMedia("(prefers-reduced-motion: reduce)").matches);
    setSecond(false);
  }, [on]);
  useEffect(() => {
    if (!going) return;
    const timer = setInterval(() => setSecond((now) => !now), EVERY_MS);
    return () => clearInterval(timer);
  }, [going]);
  return {
    second,
    going,
    setGoing,
    swap: () => {
      setGoing(false);
      setSecond((now) => !now);
    },
  };
}
