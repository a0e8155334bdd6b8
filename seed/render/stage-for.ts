import type { Conditions } from "./conditions.ts";
import type { Random } from "./random.ts";
import type { Stage } from "./stage.ts";
import type { Subject } from "./subject.ts";

/** The object that bears a mark, a little different each time. */
export function stageFor(subject: Subject, conditions: Conditions, random: Random): Stage {
  const { width: w, height: h } = subject.design;
  const reach = Math.hypot(w, h) / 2;
  switch (subject.stage) {
    case "full":
      return { kind: "full", bulge: random.between(-0.05, 0.08) };
    case "wall":
      return { kind: "wall", radius: Math.max(w * 1.25, random.between(45, 80)) };
    case "bar":
      return {
        kind: "bar",
        half: h * random.between(0.72, 1.05) + 0.8,
        flare: random.between(-0.4, 0.9),
        round: Math.min(2.2, h * 0.35),
        bulge: random.between(0.2, 0.7),
      };
    case "disc": {
      const radius = reach * random.between(1.7, 3.2) + 8;
      const angle = random.between(0, Math.PI * 2);
      const away = random.between(0, Math.max(0, radius - reach * 1.25));
      return {
        kind: "disc",
        x: Math.cos(angle) * away,
        y: Math.sin(angle) * away,
        radius,
        round: random.between(1, 2.4),
        rings:
          subject.material !== "glass" && subject.material !== "stoneware" && random.chance(0.7)
            ? random.between(0.4, 1.4)
            : 0,
        bulge: random.between(-0.5, 0.8),
      };
    }
    case "button":
      return {
        kind: "disc",
        x: 0,
        y: 0,
        radius: Math.max(w, h) / 2 + Math.max(w, h) * 0.07,
        round: Math.max(w, h) * 0.09,
        rings: 0,
        bulge: Math.max(w, h) * 0.07,
      };
    case "sheet": {
      const paper = subject.material === "paper";
      const margin = Math.max(1.2, Math.min(w, h) * random.between(0.07, 0.2));
      return {
        kind: "sheet",
        halfWidth: w / 2 + margin * (subject.material === "woven" ? 1.6 : 1),
        halfHeight: h / 2 + margin,
        corner:
          subject.design.frame.endsWith("circle") && random.chance(0.75)
            ? h / 2 + margin
            : random.chance(0.3)
              ? margin * 0.5
              : 0.3,
        round: paper ? 0 : 0.35,
        ragged: paper ? random.between(0.03, 0.2) + conditions.age * random.between(0, 0.5) : 0.06,
        bulge: random.between(-0.6, 0.9),
      };
    }
  }
}
