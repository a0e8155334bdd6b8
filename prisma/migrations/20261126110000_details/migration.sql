-- What a model keeps of a photograph beside its vector, to compare it closely with a query: 64 x 10 x 10 signed bytes.
ALTER TABLE retrieval.photograph_vectors ADD COLUMN details bytea;
-- Such numbers do not shrink, and are read by the few hundred at most.
ALTER TABLE retrieval.photograph_vectors ALTER COLUMN details SET STORAGE EXTERNAL;
