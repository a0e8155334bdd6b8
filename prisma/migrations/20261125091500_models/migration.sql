-- Several models side by side: one answers, one may be filled meanwhile, others are retired.
CREATE TABLE retrieval.models (
  -- name@version
  model text PRIMARY KEY CHECK (model ~ '^[a-z][a-z0-9-]*@[0-9]+\.[0-9]+\.[0-9]+$'),
  -- a vector's length
  dimension integer NOT NULL CHECK (dimension BETWEEN 1 AND 2000),
  state text NOT NULL CHECK (state IN ('answering', 'filling', 'retired')),
  since timestamptz(3) NOT NULL DEFAULT now()
);
CREATE UNIQUE INDEX models_one_answers ON retrieval.models (state) WHERE state = 'answering';
CREATE UNIQUE INDEX models_one_is_filled ON retrieval.models (state) WHERE state = 'filling';

-- Each model has vectors of its own length, and an index of its own: one index over several models would give a
-- search the neighbours of all of them, most of which it must throw away.
DROP INDEX retrieval.photograph_vectors_nearest;
ALTER TABLE retrieval.photograph_vectors ALTER COLUMN vector TYPE public.vector;

-- The model with the most vectors has answered so far.
INSERT INTO retrieval.models (model, dimension, state)
SELECT model, 256, CASE row_number() OVER (ORDER BY count(*) DESC, model DESC) WHEN 1 THEN 'answering' ELSE 'retired' END
FROM retrieval.photograph_vectors GROUP BY model;

DO $$
DECLARE answering text;
BEGIN
  SELECT model INTO answering FROM retrieval.models WHERE state = 'answering';
  IF answering IS NOT NULL THEN
    EXECUTE format(
      'CREATE INDEX %I ON retrieval.photograph_vectors USING hnsw ((vector::public.vector(256)) public.vector_ip_ops)
       WITH (m = 16, ef_construction = 100) WHERE model = %L',
      'nearest_' || md5(answering), answering);
  END IF;
END $$;
