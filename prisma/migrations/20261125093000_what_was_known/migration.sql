-- What somebody who looks a mark up knows besides the photograph.
ALTER TABLE "look_ups"
    ADD COLUMN "asked_letters" TEXT NOT NULL DEFAULT '',
    ADD COLUMN "asked_width_mm" DOUBLE PRECISION,
    ADD COLUMN "asked_height_mm" DOUBLE PRECISION,
    ADD COLUMN "asked_technique" TEXT,
    ADD COLUMN "asked_material" TEXT NOT NULL DEFAULT '',
    ADD COLUMN "asked_kind" TEXT;

-- Answers that are kept already, in the form that answers have from now on.
UPDATE "look_ups" SET "matches" = COALESCE((
  SELECT jsonb_agg(
    one.match || jsonb_build_object(
      'entry', one.match -> 'hit' -> 'entry', 'foundBy', 'photograph', 'findings', '[]'::jsonb)
    ORDER BY one.place)
  FROM jsonb_array_elements("look_ups"."matches") WITH ORDINALITY AS one (match, place)
), '[]'::jsonb);

-- The letters of a transcription in the form in which readings are compared: app/_core/reading/plain-letters.ts writes
-- them; what is there already is written here by the same rules, step by step:
-- marks that stand for nothing fall away and gaps become stars; accents go; capitals go; what is no letter goes.
-- A test compares the two.
ALTER TABLE retrieval.entry_words ADD COLUMN letters text NOT NULL DEFAULT '';

UPDATE retrieval.entry_words AS words SET letters = regexp_replace(
  regexp_replace(
    replace(lower(public.unaccent('public.unaccent'::regdictionary, regexp_replace(
      normalize(
        regexp_replace(
          regexp_replace(revisions.content ->> 'words', '[?*](?![^\[]*\])', ' ', 'g'),
          '\[\s*(?:\.{2,}|\u2026|\*|\?)?\s*\]|\u2026', '*', 'g'),
        NFKD),
      '[\u0300-\u036f]', '', 'g'))), 'ς', 'σ'),
    '[\s\u0021-\u0025\u0027-\u0029\u002b-\u002f\u003a-\u003e\u0040\u005b-\u0060\u007b-\u00bf\u00d7\u00f7\u2000-\u2bff\u3000-\u303f]',
    '', 'g'),
  '\*+', '*', 'g')
FROM public.entries
JOIN public.revisions ON revisions.id = entries.current_revision_id
WHERE entries.id = words.entry_id;

ALTER TABLE retrieval.entry_words ALTER COLUMN letters DROP DEFAULT;
CREATE INDEX entry_words_letters ON retrieval.entry_words USING gin (letters public.gin_trgm_ops);
