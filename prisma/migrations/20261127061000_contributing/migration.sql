-- Contributing: what a revision says besides, why it was made, and what members are still writing.
ALTER TABLE "photographs" ADD COLUMN "impression" INTEGER;

ALTER TABLE "revisions" ADD COLUMN "field" TEXT;
ALTER TABLE "revisions" ADD COLUMN "summary" TEXT NOT NULL DEFAULT '';

CREATE TABLE "drafts" (
    "id" TEXT NOT NULL,
    "owner_id" UUID NOT NULL,
    "entry_slug" TEXT,
    "parents" UUID[],
    "based_on" UUID,
    "typed" JSONB NOT NULL,
    "photographs" JSONB NOT NULL DEFAULT '[]',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "submitted_slug" TEXT,
    "submitted_number" INTEGER,

    CONSTRAINT "drafts_pkey" PRIMARY KEY ("id")
);

CREATE INDEX "drafts_owner_id_updated_at_idx" ON "drafts"("owner_id", "updated_at");
CREATE INDEX "drafts_photographs_idx" ON "drafts" USING GIN ("photographs");
