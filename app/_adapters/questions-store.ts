import type { Knowledge } from "#core/look-ups/knowledge";
import type { KeptQuestion, QuestionPhotograph } from "#core/questions/kept-question";
import type { QuestionEvent } from "#core/questions/question";
import type { Questions } from "../_usecases/ports.ts";
import type { Database } from "./database.ts";
import { Prisma } from "./generated/client.ts";

const include = {
  events: { orderBy: { number: "asc" } },
  photographs: { orderBy: { position: "asc" } },
} as const satisfies Prisma.QuestionInclude;

type Row = Prisma.QuestionGetPayload<{ include: typeof include }>;

/** Open questions with their events. */
export function createQuestions({ prisma }: Database): Questions {
  return {
    async publish({ id, keyHash, askerMember, lookUp, asked, photographs, events }) {
      const data = {
        id,
        keyHash,
        askerMemberId: askerMember,
        lookUp,
        asked: asked as unknown as Prisma.InputJsonValue,
        state: "open",
        events: { create: rowsOf(events, 0, askerMember) },
        photographs: { create: photographs.map(photographRow) },
      };
      try {
        await prisma.question.create({ data });
        return null;
      } catch (error) {
        if (!isTaken(error) || lookUp === null) throw error;
        return (await prisma.question.findUniqueOrThrow({ where: { lookUp } })).id;
      }
    },
    async find(id) {
      // Anything else is no id, and is not asked for.
      if (!/^[\w-]{1,64}$/.test(id)) return null;
      const row = await prisma.question.findUnique({ where: { id }, include });
      return row && { ...toKept(row), keyHash: row.keyHash, askerMember: row.askerMemberId };
    },
    async append(id, had, events, now, by) {
      const withdrawn = now.state === "withdrawn";
      const entrySlug = now.state === "unasked" ? null : now.entry;
      try {
        await prisma.$transaction(async (tx) => {
          const rows = rowsOf(events, had, by).map((row) => ({ ...row, questionId: id }));
          await tx.questionEvent.createMany({ data: rows });
          await tx.question.update({
            where: { id },
            data: { state: now.state, entrySlug, ...(withdrawn ? { lookUp: null } : {}) },
          });
          if (withdrawn) await tx.questionPhotograph.deleteMany({ where: { questionId: id } });
        });
        return true;
      } catch (error) {
        if (isTaken(error)) return false;
        throw error;
      }
    },
    async list(after, limit) {
      const rows = await prisma.question.findMany({
        where: { state: { in: ["open", "answered"] } },
        // "open" comes after "answered" in the alphabet.
        orderBy: [{ state: "desc" }, { createdAt: "desc" }, { id: "asc" }],
        include,
        skip: after,
        take: limit,
      });
      return rows.map(toKept);
    },
    async ofEntry(entrySlug) {
      const row = await prisma.question.findUnique({ where: { entrySlug }, include });
      return row && row.state !== "withdrawn" ? toKept(row) : null;
    },
    async ofLookUp(lookUp) {
      return (await prisma.question.findUnique({ where: { lookUp }, select: { id: true } }))?.id ?? null;
    },
  };
}

/** The number was taken by an event that came first, or the look-up is published already. */
const isTaken = (error: unknown): boolean =>
  error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2002";

function rowsOf(events: readonly QuestionEvent[], had: number, memberId: string | null) {
  return events.map(({ type, at, ...payload }, i) => ({
    number: had + i + 1,
    type,
    at: new Date(at),
    memberId,
    payload: payload as unknown as Prisma.InputJsonValue,
  }));
}

function photographRow(photograph: QuestionPhotograph, position: number) {
  const { region, ...facts } = photograph;
  const { x: regionX, y: regionY, width: regionWidth, height: regionHeight, turn: regionTurn } = region;
  return { ...facts, position, regionX, regionY, regionWidth, regionHeight, regionTurn };
}

function toKept({ id, lookUp, asked, photographs, events }: Row): KeptQuestion {
  return {
    id,
    lookUp,
    asked: asked as unknown as Knowledge,
    photographs: photographs.map(({ sha256, width, height, licence, credit, ...at }) => ({
      sha256,
      width,
      height,
      region: {
        x: at.regionX,
        y: at.regionY,
        width: at.regionWidth,
        height: at.regionHeight,
        turn: at.regionTurn,
      },
      licence,
      credit,
    })),
    events: events.map(
      ({ type, at, payload }) => ({ ...(payload as object), type, at: at.toISOString() }) as QuestionEvent,
    ),
  };
}
