-- The trail: everything that happened, each link carrying the hash of the one before.
CREATE TABLE "trail_links" (
    "trail" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "type" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "payload" TEXT NOT NULL,
    "previous_hash" TEXT,
    "hash" TEXT NOT NULL,

    CONSTRAINT "trail_links_pkey" PRIMARY KEY ("trail","number")
);

CREATE UNIQUE INDEX "trail_links_trail_previous_hash_key" ON "trail_links"("trail", "previous_hash");
CREATE INDEX "trail_links_by_id_at_idx" ON "trail_links"("by_id", "at");
CREATE INDEX "trail_links_type_at_idx" ON "trail_links"("type", "at");

CREATE TRIGGER trail_links_are_immutable BEFORE UPDATE OR DELETE ON "trail_links"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER trail_links_are_never_emptied BEFORE TRUNCATE ON "trail_links"
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- What lists need of an entry's trail, kept beside it; the trail alone says what is so.
ALTER TABLE "entries"
  ADD COLUMN "verified_revision_id" UUID,
  ADD COLUMN "review_revision_id" UUID,
  ADD COLUMN "review_submitted_at" TIMESTAMPTZ(3),
  ADD COLUMN "review_closes_at" TIMESTAMPTZ(3),
  ADD COLUMN "review_voters" UUID[],
  ADD COLUMN "field" TEXT,
  ADD COLUMN "challenged" BOOLEAN NOT NULL DEFAULT false,
  ADD COLUMN "replaced_by" TEXT,
  ADD COLUMN "merged" BOOLEAN NOT NULL DEFAULT false,
  ADD COLUMN "locked" BOOLEAN NOT NULL DEFAULT false,
  ADD COLUMN "listed" BOOLEAN NOT NULL DEFAULT true,
  ADD COLUMN "hidden_texts" TEXT[];
CREATE INDEX "entries_review_submitted_at_idx" ON "entries"("review_submitted_at");

ALTER TABLE "photographs" ADD COLUMN "hidden" BOOLEAN NOT NULL DEFAULT false;

-- Images that a challenge shows as its evidence.
CREATE TABLE "evidence_photographs" (
    "entry_id" UUID NOT NULL,
    "challenge" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,

    CONSTRAINT "evidence_photographs_pkey" PRIMARY KEY ("entry_id","challenge","position")
);
CREATE INDEX "evidence_photographs_sha256_idx" ON "evidence_photographs"("sha256");
ALTER TABLE "evidence_photographs" ADD CONSTRAINT "evidence_photographs_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "entries"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- The member who submitted a revision; empty for an import.
ALTER TABLE "revisions" ADD COLUMN "author_id" UUID;
