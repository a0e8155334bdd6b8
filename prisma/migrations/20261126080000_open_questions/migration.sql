-- Open questions: look-ups published because nothing fitted, with everything that happened to each.
CREATE TABLE "questions" (
    "id" TEXT NOT NULL,
    "key_hash" TEXT NOT NULL,
    "asker_member_id" UUID,
    "look_up" TEXT,
    "state" TEXT NOT NULL,
    "asked" JSONB NOT NULL,
    "entry_slug" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "questions_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "question_events" (
    "question_id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "type" TEXT NOT NULL,
    "payload" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "member_id" UUID,

    CONSTRAINT "question_events_pkey" PRIMARY KEY ("question_id","number")
);

CREATE TABLE "question_photographs" (
    "question_id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "region_x" DOUBLE PRECISION NOT NULL,
    "region_y" DOUBLE PRECISION NOT NULL,
    "region_width" DOUBLE PRECISION NOT NULL,
    "region_height" DOUBLE PRECISION NOT NULL,
    "region_turn" DOUBLE PRECISION NOT NULL,
    "licence" TEXT NOT NULL,
    "credit" TEXT NOT NULL,

    CONSTRAINT "question_photographs_pkey" PRIMARY KEY ("question_id","position")
);

CREATE UNIQUE INDEX "questions_look_up_key" ON "questions"("look_up");
CREATE UNIQUE INDEX "questions_entry_slug_key" ON "questions"("entry_slug");
CREATE INDEX "questions_state_created_at_idx" ON "questions"("state", "created_at");
CREATE INDEX "question_photographs_sha256_idx" ON "question_photographs"("sha256");

ALTER TABLE "question_events" ADD CONSTRAINT "question_events_question_id_fkey" FOREIGN KEY ("question_id") REFERENCES "questions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "question_photographs" ADD CONSTRAINT "question_photographs_question_id_fkey" FOREIGN KEY ("question_id") REFERENCES "questions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

CREATE TRIGGER question_events_are_immutable BEFORE UPDATE OR DELETE ON "question_events"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
