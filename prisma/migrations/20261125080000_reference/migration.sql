-- Extensions: nearest neighbours, words that are nearly the same, letters without their accents.
CREATE EXTENSION IF NOT EXISTS vector;
CREATE EXTENSION IF NOT EXISTS pg_trgm;
CREATE EXTENSION IF NOT EXISTS unaccent;

-- CreateTable
CREATE TABLE "makers" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "trades" TEXT[],
    "active" TEXT,
    "active_earliest" INTEGER,
    "active_latest" INTEGER,
    "other_names" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "sources" TEXT[],
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "makers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "maker_successions" (
    "successor_id" UUID NOT NULL,
    "predecessor_id" UUID NOT NULL,
    "how" TEXT NOT NULL,

    CONSTRAINT "maker_successions_pkey" PRIMARY KEY ("successor_id","predecessor_id")
);

-- CreateTable
CREATE TABLE "entries" (
    "id" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "current_revision_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "entries_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "revisions" (
    "id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "content_hash" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "title" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "technique" TEXT,
    "material" TEXT NOT NULL,
    "maker_id" UUID,
    "earliest" INTEGER,
    "latest" INTEGER,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "created_by" TEXT NOT NULL,

    CONSTRAINT "revisions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "revision_parents" (
    "revision_id" UUID NOT NULL,
    "parent_id" UUID NOT NULL,

    CONSTRAINT "revision_parents_pkey" PRIMARY KEY ("revision_id","parent_id")
);

-- CreateTable
CREATE TABLE "photographs" (
    "id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "region_x" DOUBLE PRECISION NOT NULL,
    "region_y" DOUBLE PRECISION NOT NULL,
    "region_width" DOUBLE PRECISION NOT NULL,
    "region_height" DOUBLE PRECISION NOT NULL,
    "region_turn" DOUBLE PRECISION NOT NULL,
    "pixels_per_mm" DOUBLE PRECISION,
    "shows" TEXT NOT NULL,
    "licence" TEXT NOT NULL,
    "credit" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "photographs_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "revision_photographs" (
    "revision_id" UUID NOT NULL,
    "photograph_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,

    CONSTRAINT "revision_photographs_pkey" PRIMARY KEY ("revision_id","photograph_id")
);

-- CreateTable
CREATE TABLE "look_ups" (
    "id" TEXT NOT NULL,
    "owner_hash" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "region_x" DOUBLE PRECISION NOT NULL,
    "region_y" DOUBLE PRECISION NOT NULL,
    "region_width" DOUBLE PRECISION NOT NULL,
    "region_height" DOUBLE PRECISION NOT NULL,
    "region_turn" DOUBLE PRECISION NOT NULL,
    "model" TEXT NOT NULL,
    "none_fits" BOOLEAN NOT NULL,
    "searched" INTEGER NOT NULL,
    "matches" JSONB NOT NULL,
    "timings" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3),

    CONSTRAINT "look_ups_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "makers_slug_key" ON "makers"("slug");

-- CreateIndex
CREATE INDEX "maker_successions_predecessor_id_idx" ON "maker_successions"("predecessor_id");

-- CreateIndex
CREATE UNIQUE INDEX "entries_slug_key" ON "entries"("slug");

-- CreateIndex
CREATE UNIQUE INDEX "entries_current_revision_id_key" ON "entries"("current_revision_id");

-- CreateIndex
CREATE INDEX "entries_state_idx" ON "entries"("state");

-- CreateIndex
CREATE INDEX "revisions_maker_id_idx" ON "revisions"("maker_id");

-- CreateIndex
CREATE INDEX "revisions_kind_idx" ON "revisions"("kind");

-- CreateIndex
CREATE INDEX "revisions_technique_idx" ON "revisions"("technique");

-- CreateIndex
CREATE INDEX "revisions_material_idx" ON "revisions"("material");

-- CreateIndex
CREATE UNIQUE INDEX "revisions_entry_id_number_key" ON "revisions"("entry_id", "number");

-- CreateIndex
CREATE INDEX "revision_parents_parent_id_idx" ON "revision_parents"("parent_id");

-- CreateIndex
CREATE INDEX "photographs_sha256_idx" ON "photographs"("sha256");

-- CreateIndex
CREATE INDEX "photographs_entry_id_idx" ON "photographs"("entry_id");

-- CreateIndex
CREATE INDEX "revision_photographs_photograph_id_idx" ON "revision_photographs"("photograph_id");

-- CreateIndex
CREATE INDEX "look_ups_expires_at_idx" ON "look_ups"("expires_at");

-- CreateIndex
CREATE INDEX "look_ups_sha256_idx" ON "look_ups"("sha256");

-- AddForeignKey
ALTER TABLE "maker_successions" ADD CONSTRAINT "maker_successions_successor_id_fkey" FOREIGN KEY ("successor_id") REFERENCES "makers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "maker_successions" ADD CONSTRAINT "maker_successions_predecessor_id_fkey" FOREIGN KEY ("predecessor_id") REFERENCES "makers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entries" ADD CONSTRAINT "entries_current_revision_id_fkey" FOREIGN KEY ("current_revision_id") REFERENCES "revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "revisions" ADD CONSTRAINT "revisions_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "entries"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "revisions" ADD CONSTRAINT "revisions_maker_id_fkey" FOREIGN KEY ("maker_id") REFERENCES "makers"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "revision_parents" ADD CONSTRAINT "revision_parents_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "revision_parents" ADD CONSTRAINT "revision_parents_parent_id_fkey" FOREIGN KEY ("parent_id") REFERENCES "revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photographs" ADD CONSTRAINT "photographs_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "entries"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "revision_photographs" ADD CONSTRAINT "revision_photographs_revision_id_fkey" FOREIGN KEY ("revision_id") REFERENCES "revisions"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "revision_photographs" ADD CONSTRAINT "revision_photographs_photograph_id_fkey" FOREIGN KEY ("photograph_id") REFERENCES "photographs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;


-- History is append-only: what was written stays as it was.
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only: % refused', TG_TABLE_NAME, TG_OP;
END $$;

CREATE TRIGGER revisions_are_immutable BEFORE UPDATE OR DELETE ON "revisions"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER revision_parents_are_immutable BEFORE UPDATE OR DELETE ON "revision_parents"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER revision_photographs_are_immutable BEFORE UPDATE OR DELETE ON "revision_photographs"
  FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- What is searched lives apart from what is recorded: it can be made again at any time.
CREATE SCHEMA retrieval;

CREATE TABLE retrieval.photograph_vectors (
  photograph_id uuid NOT NULL REFERENCES public.photographs (id) ON DELETE CASCADE,
  -- name@version of the model that made the vector
  model text NOT NULL,
  vector public.vector(256) NOT NULL,
  PRIMARY KEY (model, photograph_id)
);
CREATE INDEX photograph_vectors_nearest ON retrieval.photograph_vectors
  USING hnsw (vector public.vector_ip_ops) WITH (m = 16, ef_construction = 100);

-- Immutable, so that it can stand in generated columns: the dictionary is named, not looked up on the search path.
CREATE FUNCTION retrieval.plain(value text) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE STRICT
  RETURN lower(public.unaccent('public.unaccent'::regdictionary, value));

CREATE TABLE retrieval.entry_words (
  entry_id uuid PRIMARY KEY REFERENCES public.entries (id) ON DELETE CASCADE,
  title text NOT NULL,
  -- maker, words on the mark, emblem: what people type first
  names text NOT NULL,
  body text NOT NULL,
  plain text NOT NULL GENERATED ALWAYS AS (retrieval.plain(title || ' ' || names)) STORED,
  document tsvector NOT NULL GENERATED ALWAYS AS (
    setweight(to_tsvector('english', retrieval.plain(title)), 'A') ||
    setweight(to_tsvector('english', retrieval.plain(names)), 'B') ||
    setweight(to_tsvector('english', retrieval.plain(body)), 'C')
  ) STORED
);
CREATE INDEX entry_words_document ON retrieval.entry_words USING gin (document);
CREATE INDEX entry_words_plain ON retrieval.entry_words USING gin (plain public.gin_trgm_ops);
